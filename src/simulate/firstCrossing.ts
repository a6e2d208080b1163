import { locate } from '../numeric/locate.ts';
import type { Step } from './step.ts';
import { EVENT_WIDTH, PROBES_PER_PERIOD } from './tolerances.ts';
import type { Watch } from './watches.ts';

/**
 * The earliest crossing of any event function inside a step, or null. Signs are compared at interior points of the
 * step, because end-point signs miss double crossings. The sign test is strict at the left: a function that is zero
 * where the segment begins does not fire there.
 *
 * @param period supply period, s; steps that follow a faster swing are short, and their ends are looked at anyway
 */
export function firstCrossing(
  step: Step,
  watches: readonly Watch[],
  period: number,
): { readonly t: number; readonly watch: Watch } | null {
  if (watches.length === 0) return null;
  const electrical = watches.some((watch) => watch.probing === 'electrical');
  const perPeriod = electrical ? PROBES_PER_PERIOD.electrical : PROBES_PER_PERIOD.speed;
  const span = step.t1 - step.t0;
  const count = Math.max(1, Math.ceil((span / period) * perPeriod));
  const near = watches.filter((watch) => mayCross(step, watch));
  if (near.length === 0) return null;
  const before = near.map((watch) => watch.g(step, step.t0));
  let left = step.t0;
  for (let i = 1; i <= count; i++) {
    const right = i === count ? step.t1 : step.t0 + (i * span) / count;
    let earliest: { t: number; watch: Watch } | null = null;
    for (const [k, watch] of near.entries()) {
      const a = before[k]!;
      const b = watch.g(step, right);
      before[k] = b;
      const fires =
        (watch.crossing !== 'falling' && a < 0 && b >= 0) || (watch.crossing !== 'rising' && a > 0 && b <= 0);
      if (!fires) continue;
      const t = b === 0 ? right : locate((time) => watch.g(step, time), left, right, a, b, EVENT_WIDTH);
      if (earliest === null || t < earliest.t) earliest = { t, watch };
    }
    if (earliest !== null) return earliest;
    left = right;
  }
  return null;
}

/** False where the value at the step's beginning is farther from zero than it can move. */
function mayCross(step: Step, { follows, g }: Watch): boolean {
  return follows === undefined || !(Math.abs(g(step, step.t0)) > step.reach(follows));
}
