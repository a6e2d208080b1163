import { element } from '../svgElement.ts';

/** Colour of everything drawn: the sheet is for paper. */
export const INK = '#000000';
/** Colour of the sheet. */
export const PAPER = '#FFFFFF';

/** Lines of a symbol, as path data. */
export function stroke(d: string): string {
  return element('path', { d });
}

/** A mechanical connection: drawn broken. */
export function linkage(d: string): string {
  return element('path', { d, 'stroke-dasharray': '4 2.5' });
}

/** A filled shape. */
export function filled(d: string): string {
  return element('path', { d, fill: INK });
}

/** An empty circle. */
export function ring(cx: number, cy: number, r: number): string {
  return element('circle', { cx, cy, r, fill: PAPER });
}

/** A circle that hides nothing. */
export function circle(cx: number, cy: number, r: number): string {
  return element('circle', { cx, cy, r, fill: 'none' });
}

/** An empty rectangle around a centre. */
export function box(cx: number, cy: number, width: number, height: number): string {
  return element('rect', { x: cx - width / 2, y: cy - height / 2, width, height, fill: 'none' });
}
