import type { IndependentMetrics } from './independentMetric.ts';
import type { PhaseVariableRun } from './phaseVariableModel.ts';

const PHASES = ['A', 'B', 'C'] as const;

/** Heat of all cages up to t, J. */
export function rotorHeat(run: PhaseVariableRun, y: Float64Array): number {
  const { rotorHeat: first, cages } = run.circuit.index;
  let sum = 0;
  for (let c = 0; c < cages; c++) sum += y[first + c]!;
  return sum;
}

/** I²t per phase and both heats between two instants, and the rotor heat in kinetic energies of a state; returns the rotor heat. */
export function heatMetrics(
  out: IndependentMetrics,
  prefix: 'start' | 'plug',
  run: PhaseVariableRun,
  a: Float64Array | null,
  b: Float64Array | null,
  moving: Float64Array | null,
): number | null {
  const names = ['I2tA', 'I2tB', 'I2tC', 'StatorHeat', 'RotorHeat', 'RotorHeatMultiple'];
  if (a === null || b === null || moving === null) {
    for (const name of names) out[prefix + name] = { value: null };
    return null;
  }
  PHASES.forEach((phase, k) => {
    const at = run.circuit.index.square + k;
    const value = b[at]! - a[at]!;
    out[`${prefix}I2t${phase}`] = { value };
  });
  const heat = rotorHeat(run, b) - rotorHeat(run, a);
  out[`${prefix}StatorHeat`] = {
    value: b[run.circuit.index.statorHeat]! - a[run.circuit.index.statorHeat]!,
  };
  out[`${prefix}RotorHeat`] = { value: heat };
  out[`${prefix}RotorHeatMultiple`] = { value: heat / run.circuit.train.kinetic(moving) };
  return heat;
}
