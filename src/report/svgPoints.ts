import type { PointMark } from './figureSpec.ts';
import { element, textElement } from './svgElement.ts';
import { textWidth } from './svgLayout.ts';
import type { Box } from './svgPanels.ts';
import type { Scale } from './svgPaths.ts';
import { colour, halo, ink, type SvgStyle } from './svgStyle.ts';

/** Radius of a mark, px. */
const RADIUS = 3.5;
/** From the middle of a mark to its label, px. */
const OFFSET = 8;
/** How far an estimated width may reach beyond the panel rather than cover something, px: the estimate is generous. */
const SLACK = 32;

/** A label where it may stand: its anchor and the space it takes, px. */
interface Place {
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'end';
  readonly left: number;
  readonly right: number;
}

/**
 * Marked points with their labels. A label stands outside the crest, so that it does not cover the curve it names, and keeps
 * clear of the labels and marks of other points as far as there is room.
 */
export function pointMarks(
  points: readonly PointMark[],
  box: Box,
  x: Scale,
  y: Scale,
  style: SvgStyle,
): string {
  const centres = points.map((point) => ({
    cx: x(point.x),
    cy: Math.min(box.bottom, Math.max(box.top, y(point.y))),
  }));
  const taken: Place[] = [];
  return points
    .map((point, i) => {
      const { cx, cy } = centres[i]!;
      const label = style.narrow ? (point.short ?? point.label) : point.label;
      const places = placesFor({ ...point, label }, cx, cy, box, style);
      const others = centres.filter((_, other) => other !== i);
      const place =
        places.find(
          (candidate) =>
            taken.every((other) => !overlap(candidate, other, style)) &&
            others.every((other) => !covers(candidate, other, style)),
        ) ?? places[0]!;
      taken.push(place);
      const circle = element('circle', {
        cx,
        cy,
        r: RADIUS,
        fill: ink(style, 'ground'),
        stroke: colour(style, point.quantity),
        'stroke-width': 1.6,
      });
      const text = textElement(label, {
        x: place.x,
        y: place.y,
        'text-anchor': place.anchor,
        'font-size': style.fontSize - 1,
        fill: ink(style, 'ink'),
        ...halo(style),
      });
      return circle + text;
    })
    .join('');
}

/** Where the label of a point may stand, the best place first. */
function placesFor(point: PointMark, cx: number, cy: number, box: Box, style: SvgStyle): Place[] {
  const width = textWidth(point.label, style.fontSize - 1) + 10;
  const fitsRight = cx + width <= box.right;
  const fitsLeft = cx - width >= box.left;
  const leftwards = !fitsRight && fitsLeft;
  const above = point.place === undefined ? point.y > 0 : point.place === 'above';
  const height = (at: number) => Math.min(box.bottom - 3, Math.max(box.top + style.fontSize - 2, at));
  const row = style.fontSize + 2;
  const first = above ? cy - 5 : cy + 13;
  const second = above ? cy + 13 : cy - 5;
  const further = above ? first - row : first + row;
  const place = (at: number, left: boolean): Place => ({
    x: left ? cx - OFFSET : cx + OFFSET,
    y: height(at),
    anchor: left ? 'end' : 'start',
    left: left ? cx - width : cx + OFFSET,
    right: left ? cx - OFFSET : cx + width,
  });
  const own = [first, further, second].map((at) => place(at, leftwards));
  const otherFits = leftwards ? cx + width <= box.right + SLACK : fitsLeft;
  const other = otherFits ? [first, further, second].map((at) => place(at, !leftwards)) : [];
  return [own[0]!, own[1]!, ...other, own[2]!];
}

function overlap(a: Place, b: Place, style: SvgStyle): boolean {
  return a.left < b.right && b.left < a.right && Math.abs(a.y - b.y) < style.fontSize;
}

function covers(place: Place, { cx, cy }: { cx: number; cy: number }, style: SvgStyle): boolean {
  return (
    cx + RADIUS > place.left &&
    cx - RADIUS < place.right &&
    cy + RADIUS > place.y - style.fontSize &&
    cy - RADIUS < place.y + 3
  );
}
