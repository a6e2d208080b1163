import { type Drawing, svgSheet } from './svgSheet.ts';

/** A drawing that is no figure over an axis, in the two sizes of a page. */
export function drawingMarkup(drawing: Drawing): string {
  return `<figure><div class="wide">${svgSheet(drawing, 'wide')}</div><div class="narrow">${svgSheet(drawing, 'narrow')}</div></figure>`;
}
