import type { LinesPanel, Series } from '../figureSpec.ts';
import type { PaintedLayout } from './paintedLayout.ts';
import { colour, dashLengths, type PaintStyle } from './paintStyle.ts';
import type { Pen } from './pen.ts';
import { type CurveMap, traceCurve } from './traceCurve.ts';

/** Width of a curve and of one of the run that is compared with, px. */
const CURVE = 1.5;
const BEHIND = 1.1;
/** How much of a curve of the compared run shows, share of one, and its strokes and gaps, px. */
const BEHIND_OPACITY = 0.5;
/** Strokes and gaps of the compared run's curves, px: none of a figure's own lines is broken so. */
export const BEHIND_DASH: readonly number[] = [5, 2];

/** Paints the curves of a panel, those of the compared run first; nothing leaves the panel's box. */
export function paintCurves(
  pen: Pen,
  style: PaintStyle,
  panel: LinesPanel,
  behind: LinesPanel | undefined,
  layout: PaintedLayout,
  index: number,
): void {
  const { left, right, top, bottom } = layout.plots[index]!;
  const map = mapOf(layout, index);
  pen.save();
  pen.beginPath();
  pen.rect(left, top, right - left, bottom - top);
  pen.clip();
  pen.lineJoin = 'round';
  pen.lineCap = 'butt';
  if (behind !== undefined) {
    pen.globalAlpha = BEHIND_OPACITY;
    for (const series of behind.series) paintSeries(pen, style, series, map, { left, right }, true);
    pen.globalAlpha = 1;
  }
  for (const series of panel.series) paintSeries(pen, style, series, map, { left, right }, false);
  pen.restore();
}

function mapOf(layout: PaintedLayout, index: number): CurveMap {
  const linear = (at: (value: number) => number, [from, to]: readonly [number, number]) => {
    const factor = (at(to) - at(from)) / (to - from);
    return { factor, offset: at(from) - factor * from };
  };
  return {
    x: linear(layout.pxAt, layout.span),
    y: linear((y) => layout.pyAt(index, y), layout.plots[index]!.domain ?? [0, 1]),
  };
}

function paintSeries(
  pen: Pen,
  style: PaintStyle,
  series: Series,
  map: CurveMap,
  window: { readonly left: number; readonly right: number },
  isBehind: boolean,
): void {
  pen.strokeStyle = colour(style, series.quantity);
  pen.lineWidth = isBehind ? BEHIND : CURVE;
  if (series.form === 'envelope') {
    paintBand(pen, style, series, map, isBehind);
    return;
  }
  pen.setLineDash(isBehind ? [...BEHIND_DASH] : dashLengths(series.dash));
  pen.beginPath();
  traceCurve(pen, series.x, series.y, map, window);
  pen.stroke();
}

function paintBand(
  pen: Pen,
  style: PaintStyle,
  { x, low, high, quantity }: Extract<Series, { form: 'envelope' }>,
  map: CurveMap,
  isBehind: boolean,
): void {
  const at = (i: number, y: Float64Array): readonly [number, number] => [
    map.x.offset + map.x.factor * x[i]!,
    map.y.offset + map.y.factor * y[i]!,
  ];
  pen.setLineDash([]);
  pen.beginPath();
  for (let i = 0; i < x.length; i += 1) pen.lineTo(...at(i, high));
  for (let i = x.length - 1; i >= 0; i -= 1) pen.lineTo(...at(i, low));
  pen.stroke();
  if (isBehind) return;
  pen.fillStyle = colour(style, quantity);
  pen.fill();
}
