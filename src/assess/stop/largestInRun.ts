import { largestBetween } from '../../numeric/largestBetween.ts';
import type { Segment } from '../../simulate/segment.ts';
import type { Trajectory } from '../../simulate/trajectory.ts';

/** Samples in a supply period among which a crest is looked for: one at twice the supply frequency is met within 9°. */
const SAMPLES_PER_PERIOD = 40;
/** Width to which the crest is located, s. */
const WIDTH = 1e-7;

/**
 * Largest value over [from, to] of a quantity that is smooth inside each segment, s; null where the window is empty.
 *
 * @param read the quantity at t, in the segment given
 */
export function largestInRun(
  trajectory: Trajectory,
  from: number,
  to: number,
  read: (t: number, segment: Segment) => number,
): number | null {
  const spacing = 1 / trajectory.scenario.supply.frequency / SAMPLES_PER_PERIOD;
  let best: { readonly value: number; readonly t: number; readonly segment: Segment } | null = null;
  for (const segment of trajectory.segments) {
    const t0 = Math.max(from, segment.t0);
    const t1 = Math.min(to, segment.t1);
    if (t1 <= t0) continue;
    const count = Math.ceil((t1 - t0) / spacing);
    for (let i = 0; i < count; i++) {
      const t = t0 + ((i + 0.5) / count) * (t1 - t0);
      const value = read(t, segment);
      if (best === null || value > best.value) best = { value, t, segment };
    }
  }
  if (best === null) return null;
  const { t, segment } = best;
  const low = Math.max(from, segment.t0, t - spacing);
  const high = Math.min(to, segment.t1, t + spacing);
  return Math.max(best.value, largestBetween((at) => read(at, segment), low, high, WIDTH).value);
}
