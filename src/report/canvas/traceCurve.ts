import { firstFrom, neverFalls } from './samples.ts';

/** Takes the corners of a path, px. */
export interface CurveSink {
  moveTo(x: number, y: number): void;
  lineTo(x: number, y: number): void;
}

/** px = offset + factor × value, on both axes. */
export interface CurveMap {
  readonly x: Linear;
  readonly y: Linear;
}

/** A straight map. */
export interface Linear {
  readonly offset: number;
  readonly factor: number;
}

/** Where the path is wanted, px on the horizontal axis. */
export interface CurveWindow {
  readonly left: number;
  readonly right: number;
}

/** From this many points per px on, only the extremes of each px are traced. */
const DENSE = 2;
/** A point nearer than this to the last one is left out, px: far below the width of a line. */
const THINNING = 0.4;

/**
 * Traces a curve. Over an axis that never falls only what is visible is traced, and where points stand closer than pixels each px
 * column keeps its first, smallest, largest and last value, so that no crest is lost; any other curve keeps every point that is
 * apart from the one before. Values that are not finite interrupt the path.
 */
export function traceCurve(
  sink: CurveSink,
  xs: Float64Array,
  ys: Float64Array,
  map: CurveMap,
  window: CurveWindow,
): void {
  if (!neverFalls(xs)) {
    tracePoints(sink, xs, ys, map, 0, xs.length, THINNING);
    return;
  }
  const valueUnder = (px: number) => (px - map.x.offset) / map.x.factor;
  // One more at each side: the curve runs up to the edge.
  const from = Math.max(0, firstFrom(xs, valueUnder(window.left)) - 1);
  const to = Math.min(xs.length, firstFrom(xs, valueUnder(window.right)) + 1);
  const columns = window.right - window.left;
  if (to - from < DENSE * columns) tracePoints(sink, xs, ys, map, from, to, 0);
  else traceExtremes(sink, xs, ys, map, from, to);
}

function tracePoints(
  sink: CurveSink,
  xs: Float64Array,
  ys: Float64Array,
  { x, y }: CurveMap,
  from: number,
  to: number,
  apart: number,
): void {
  let isDown = false;
  let lastX = Number.NaN;
  let lastY = Number.NaN;
  for (let i = from; i < to; i += 1) {
    const px = x.offset + x.factor * xs[i]!;
    const py = y.offset + y.factor * ys[i]!;
    if (!Number.isFinite(px) || !Number.isFinite(py)) {
      isDown = false;
      continue;
    }
    if (isDown && Math.abs(px - lastX) < apart && Math.abs(py - lastY) < apart && i < to - 1) continue;
    if (isDown) sink.lineTo(px, py);
    else sink.moveTo(px, py);
    isDown = true;
    lastX = px;
    lastY = py;
  }
}

function traceExtremes(
  sink: CurveSink,
  xs: Float64Array,
  ys: Float64Array,
  { x, y }: CurveMap,
  from: number,
  to: number,
): void {
  let isDown = false;
  let i = from;
  while (i < to) {
    if (!Number.isFinite(ys[i]!)) {
      isDown = false;
      i += 1;
      continue;
    }
    const column = Math.floor(x.offset + x.factor * xs[i]!);
    const first = i;
    let least = i;
    let most = i;
    let last = i;
    while (i < to && Number.isFinite(ys[i]!) && Math.floor(x.offset + x.factor * xs[i]!) === column) {
      if (ys[i]! < ys[least]!) least = i;
      if (ys[i]! > ys[most]!) most = i;
      last = i;
      i += 1;
    }
    let previous = -1;
    for (const kept of [first, Math.min(least, most), Math.max(least, most), last]) {
      if (kept === previous) continue;
      previous = kept;
      const px = x.offset + x.factor * xs[kept]!;
      const py = y.offset + y.factor * ys[kept]!;
      if (isDown) sink.lineTo(px, py);
      else sink.moveTo(px, py);
      isDown = true;
    }
  }
}
