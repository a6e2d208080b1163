import { area, line } from 'd3-shape';
import type { Series } from './figureSpec.ts';

/** Maps an axis value to px. */
export type Scale = (value: number) => number;

/** Points nearer than this to the last one drawn are left out, px: far below the width of a line. */
const THINNING = 0.3;
const DIGITS = 2;

/** SVG path data of a series; points with a non-finite coordinate interrupt it. */
export function seriesPath(series: Series, x: Scale, y: Scale): string {
  if (series.form === 'line') return linePath(series.x, series.y, x, y);
  const indices = Array.from(series.x.keys());
  const band = area<number>()
    .x((i) => x(series.x[i]!))
    .y0((i) => y(series.low[i]!))
    .y1((i) => y(series.high[i]!))
    .defined((i) => Number.isFinite(series.low[i]!) && Number.isFinite(series.high[i]!))
    .digits(DIGITS);
  return band(indices) ?? '';
}

function linePath(xs: Float64Array, ys: Float64Array, x: Scale, y: Scale): string {
  const kept: [number, number][] = [];
  let last: [number, number] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < xs.length; i += 1) {
    const point: [number, number] = [x(xs[i]!), y(ys[i]!)];
    const near = Math.hypot(point[0] - last[0], point[1] - last[1]) < THINNING;
    if (near && i < xs.length - 1) continue;
    kept.push(point);
    last = point;
  }
  const path = line<[number, number]>()
    .x((point) => point[0])
    .y((point) => point[1])
    .defined((point) => Number.isFinite(point[0]) && Number.isFinite(point[1]))
    .digits(DIGITS);
  return path(kept) ?? '';
}
