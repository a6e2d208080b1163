import type { PhaseVariableRun } from './phaseVariableModel.ts';
import { hermite, shrinkBracket } from './rootFinder.ts';
import type { Occurrence, RunReader } from './runReader.ts';
import { INSTANT_WIDTH } from './stepper.ts';

/** Local maxima within this fraction of the largest one found on the step ends are refined. */
const NEARLY_LARGEST = 1e-3;

/**
 * Largest r.m.s. current of one terminal over any one supply period inside a window, and that period's end.
 * The mean square over [t − T, t] is largest where i²(t) = i²(t − T), or at an end of the window.
 */
export function worstCycle(
  run: PhaseVariableRun,
  reader: RunReader,
  from: number,
  to: number,
  phase: number,
): Occurrence | null {
  const period = 1 / run.scenario.supply.frequency;
  if (to - from < period) return null;
  const at = run.circuit.index.square + phase;
  const exactSquare = (t: number) => reader.stateAt(t)[at]!;
  const exactWindow = (t: number) => exactSquare(t) - exactSquare(t - period);
  const growth = (t: number) => reader.stateAt(t)[phase]! ** 2 - reader.stateAt(t - period)[phase]! ** 2;

  // On the step ends the period's start is read from a cubic: only to find where to look.
  const times: number[] = [from + period];
  const values: number[] = [exactWindow(from + period)];
  const steps = reader.stepsIn(from, to);
  let behind = 0;
  for (const step of steps) {
    if (step.t1 <= from + period) continue;
    const start = step.t1 - period;
    while (steps[behind]!.t1 < start) behind++;
    const s = steps[behind]!;
    const h = s.t1 - s.t0;
    times.push(step.t1);
    values.push(
      step.y1[at]! - hermite(s.y0[at]!, s.f0[at]!, s.y1[at]!, s.f1[at]!, h, Math.max(0, (start - s.t0) / h)),
    );
  }
  const largest = values.reduce((a, b) => Math.max(a, b), 0);
  let best: Occurrence = { value: -1, time: from + period };
  for (let k = 0; k < times.length; k++) {
    const here = values[k]!;
    if (here < largest * (1 - NEARLY_LARGEST)) continue;
    if (here < (values[k - 1] ?? 0) || here < (values[k + 1] ?? 0)) continue;
    let time = times[k]!;
    const low = times[k - 1] ?? time;
    const high = times[k + 1] ?? time;
    const before = growth(low);
    const after = growth(high);
    if (before > 0 && after < 0) time = shrinkBracket(growth, low, before, high, after, INSTANT_WIDTH);
    const value = exactWindow(time);
    if (value > best.value) best = { value, time };
  }
  return { value: Math.sqrt(best.value / period), time: best.time };
}
