import { fieldArrow } from './fieldArrow.ts';
import { FULL_FLUX } from './fieldScale.ts';
import type { Film } from './film.ts';
import { sampleBelow } from './sampleBelow.ts';

/** The trail is as long as half a period of the supply, in periods. */
const PERIODS = 0.5;

/**
 * Path of the stator flux's tip over the last half period up to t, s, as an SVG polyline's points.
 *
 * @param count points, at least 2
 */
export function fieldTrail(film: Film, t: number, count: number): string {
  const { columns, base, tStart, tEnd } = film;
  const end = Math.min(t, tEnd);
  const start = Math.max(tStart, end - PERIODS / base.frequency);
  const points = Array.from({ length: count }, (_, i) => {
    const { index, share } = sampleBelow(columns.t, start + ((end - start) * i) / (count - 1));
    const read = (column: Float64Array) =>
      share === 0 ? column[index]! : column[index]! + share * (column[index + 1]! - column[index]!);
    const tip = fieldArrow(read(columns.psiAlpha), read(columns.psiBeta), FULL_FLUX * base.flux);
    return `${tip.x.toFixed(1)},${tip.y.toFixed(1)}`;
  });
  return points.join(' ');
}
