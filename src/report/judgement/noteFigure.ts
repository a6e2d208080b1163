import type { FigureSpec } from '../figureSpec.ts';
import { renderSvg } from '../renderSvg.ts';

/** Width of the drawing for telephones, px. */
const NARROW_WIDTH = 400;

/** The static figure for wide pages and print, and the one for telephones; a page shows one of them. */
export function noteFigure(spec: FigureSpec): string {
  const wide = renderSvg(spec, { theme: 'css' });
  const narrow = renderSvg(spec, { theme: 'css', width: NARROW_WIDTH, idSuffix: '-narrow' });
  return `<figure><div class="wide">${wide}</div><div class="narrow">${narrow}</div></figure>`;
}
