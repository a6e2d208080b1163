import type { IndependentMetric, IndependentMetrics } from './independentMetric.ts';
import type { PhaseVariableRun } from './phaseVariableModel.ts';
import type { Occurrence, RunReader, Signal } from './runReader.ts';
import { worstCycle } from './worstCycle.ts';

const PHASES = ['A', 'B', 'C'] as const;

/** Phases whose values differ by less than this fraction are equal: two poles alone carry one and the same current. */
const EQUAL = 1e-9;

/** The largest of the phases' values, with its phase where it is larger than the others'. */
function largestOf(found: readonly (Occurrence | null)[]): IndependentMetric {
  let best: IndependentMetric & { readonly value: number | null } = { value: null };
  found.forEach((occurrence, k) => {
    if (occurrence !== null && (best.value === null || occurrence.value > best.value)) {
      best = { ...occurrence, phase: PHASES[k]! };
    }
  });
  const { value, time } = best;
  if (value === null || time === undefined) return best;
  const equals = found.filter((occurrence) => occurrence !== null && occurrence.value >= value * (1 - EQUAL));
  return equals.length > 1 ? { value, time } : best;
}

/** Crest current, worst period and torque extremes of one window; absent where the window does not begin. */
export function windowMetrics(
  out: IndependentMetrics,
  prefix: 'start' | 'plug',
  run: PhaseVariableRun,
  reader: RunReader,
  from: number | null,
  to: number,
): void {
  const { circuit } = run;
  const each = <T>(f: (phase: number) => T) => [0, 1, 2].map(f);
  const absent: IndependentMetric = { value: null };
  const torque: Signal = { value: (y) => circuit.torque(y), rate: (y, f) => circuit.torqueRate(y, f) };
  if (from === null) {
    for (const name of ['PeakCurrent', 'WorstCycleCurrent', 'MaximumTorque', 'MinimumTorque']) {
      out[prefix + name] = absent;
    }
    return;
  }
  const crests = each((k) => {
    const signal: Signal = { value: (y) => y[k]!, rate: (_y, f) => f[k]! };
    const high = reader.extreme(from, to, signal, 1)!;
    const low = reader.extreme(from, to, signal, -1)!;
    return high.value >= -low.value ? high : { value: -low.value, time: low.time };
  });
  out[`${prefix}PeakCurrent`] = largestOf(crests);
  out[`${prefix}WorstCycleCurrent`] = largestOf(each((k) => worstCycle(run, reader, from, to, k)));
  out[`${prefix}MaximumTorque`] = reader.extreme(from, to, torque, 1) ?? absent;
  out[`${prefix}MinimumTorque`] = reader.extreme(from, to, torque, -1) ?? absent;
}
