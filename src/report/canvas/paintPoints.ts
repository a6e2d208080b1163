import type { PointMark } from '../figureSpec.ts';
import { textWidth } from '../svgLayout.ts';
import type { Box, PaintedLayout } from './paintedLayout.ts';
import { colour, ink, type PaintStyle, paintText, smallSize } from './paintStyle.ts';
import type { Pen } from './pen.ts';

/** Radius of a mark, px. */
const RADIUS = 3.5;
/** From the middle of a mark to its label, px. */
const OFFSET = 8;

/** A label where it may stand, and the space it takes, px. */
interface Place extends Box {
  readonly x: number;
  readonly y: number;
  readonly align: 'start' | 'end';
}

/**
 * Paints the marked points of a panel that are in its box. A label stands outside the crest, so that it does not cover the curve it
 * names, and takes another place where one stands already.
 */
export function paintPoints(
  pen: Pen,
  style: PaintStyle,
  points: readonly PointMark[],
  layout: PaintedLayout,
  index: number,
): void {
  const plot = layout.plots[index]!;
  const seen = points
    .map((point) => ({ point, x: layout.pxAt(point.x), y: layout.pyAt(index, point.y) }))
    .filter(({ x }) => x >= plot.left && x <= plot.right);
  const taken: Box[] = [];
  for (const { point, x, y } of seen) {
    const at = Math.min(plot.bottom, Math.max(plot.top, y));
    const label = style.narrow ? (point.short ?? point.label) : point.label;
    const others = seen.filter((other) => other.point !== point).map((other) => around(other.x, other.y));
    const places = placesFor(point, label, x, at, plot, style);
    const free = places.find((place) => [...taken, ...others].every((other) => !overlap(place, other)));
    const place = free ?? places[0]!;
    taken.push(place);
    pen.beginPath();
    pen.arc(x, at, RADIUS, 0, 2 * Math.PI);
    pen.setLineDash([]);
    pen.fillStyle = ink(style, 'ground');
    pen.strokeStyle = colour(style, point.quantity);
    pen.lineWidth = 1.6;
    pen.fill();
    pen.stroke();
    paintText(pen, style, label, place.x, place.y, { align: place.align, halo: true });
  }
}

/** Where the label of a point may stand, the best place first. */
function placesFor(
  point: PointMark,
  label: string,
  x: number,
  y: number,
  plot: Box,
  style: PaintStyle,
): Place[] {
  const small = smallSize(style);
  const width = textWidth(label, small);
  const isAbove = point.place === undefined ? point.y > 0 : point.place === 'above';
  const outside = isAbove ? y - 5 : y + small + 1;
  const inside = isAbove ? y + small + 1 : y - 5;
  const further = isAbove ? outside - small - 2 : outside + small + 2;
  const fitsRight = x + OFFSET + width <= plot.right;
  const sides: readonly ('start' | 'end')[] = fitsRight ? ['start', 'end'] : ['end', 'start'];
  return [outside, further, inside].flatMap((wanted) =>
    sides.map((align): Place => {
      const base = Math.min(plot.bottom - 3, Math.max(plot.top + small - 2, wanted));
      const left = align === 'start' ? x + OFFSET : x - OFFSET - width;
      const anchor = align === 'start' ? left : left + width;
      return { x: anchor, y: base, align, left, right: left + width, top: base - small, bottom: base + 3 };
    }),
  );
}

function around(x: number, y: number): Box {
  return { left: x - RADIUS, right: x + RADIUS, top: y - RADIUS, bottom: y + RADIUS };
}

function overlap(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}
