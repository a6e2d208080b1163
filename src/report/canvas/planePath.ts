import { formatInstant, formatNumber } from '../formatQuantity.ts';
import type { Film } from '../live/film.ts';
import { frameAt } from '../live/frameAt.ts';
import type { Tail } from './paintCursor.ts';
import type { PaintedLayout } from './paintedLayout.ts';
import { firstFrom } from './samples.ts';

/** A place in the torque–speed plane, in the film's units. */
export interface PlanePoint {
  readonly speed: number;
  readonly torque: number;
}

/** How far back the way of the moving point is shown, s: one cycle of the supply at 50 Hz. */
const TAIL = 0.02;

/** Where a run stands in the torque–speed plane at t, s. */
export function planePoint(film: Film, t: number): PlanePoint {
  const { speed, torque } = frameAt(film, t);
  return { speed, torque };
}

/** The last 20 ms of the way to where a run stands at t, s, as far as there are samples. */
export function planeTail(film: Film, t: number): Tail {
  const { t: instants, speed, torque } = film.columns;
  const from = firstFrom(instants, t - TAIL);
  const to = firstFrom(instants, t);
  return { x: speed.subarray(from, to), y: torque.subarray(from, to) };
}

/**
 * The instant, s, at which the run passes nearest to a place of the painted plane; of ways that cross there the one next to `near`, s.
 *
 * @param px of the place
 * @param py of the place
 */
export function nearestInstant(
  film: Film,
  layout: PaintedLayout,
  panel: number,
  [px, py]: readonly [number, number],
  near: number,
): number {
  const { t, speed, torque } = film.columns;
  const duration = film.tEnd - film.tStart || 1;
  let best = near;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < t.length; i += 1) {
    const distance = Math.hypot(layout.pxAt(speed[i]!) - px, layout.pyAt(panel, torque[i]!) - py);
    // A whole run of time weighs as much as 20 px: a hand stays on the branch that it drags along.
    const weighed = distance + (BRANCH * Math.abs(t[i]! - near)) / duration;
    if (weighed < least) {
      least = weighed;
      best = t[i]!;
    }
  }
  return best;
}

/** px that a whole run of time weighs where branches of a curve cross. */
const BRANCH = 20;

/** "0.1234 s: 1450 r/min, −12.3 N·m": where the moving point stands, in words. */
export function planeWords(film: Film, t: number): string {
  const { speed, torque } = planePoint(film, t);
  const unit = film.units === 'us' ? 'lbf·ft' : 'N·m';
  return `${formatInstant(t)}: ${formatNumber(speed)} r/min, ${formatNumber(torque)} ${unit}`;
}
