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

/** I²t per phase and both heats between two instants; returns the rotor heat. */
export function heatMetrics(
  out: IndependentMetrics,
  prefix: 'start' | 'plug',
  run: PhaseVariableRun,
  a: Float64Array | null,
  b: Float64Array | null,
  kineticSpeed: number,
): number | null {
  const names = ['I2tA', 'I2tB', 'I2tC', 'StatorHeat', 'RotorHeat', 'RotorHeatMultiple'];
  if (a === null || b === null) {
    for (const name of names) out[prefix + name] = { value: null };
    return null;
  }
  let total = 0;
  PHASES.forEach((phase, k) => {
    const at = run.circuit.index.square + k;
    const value = b[at]! - a[at]!;
    total += value;
    out[`${prefix}I2t${phase}`] = { value };
  });
  const heat = rotorHeat(run, b) - rotorHeat(run, a);
  out[`${prefix}StatorHeat`] = { value: run.scenario.machine.Rs * total };
  out[`${prefix}RotorHeat`] = { value: heat };
  out[`${prefix}RotorHeatMultiple`] = { value: heat / (0.5 * run.circuit.inertia * kineticSpeed ** 2) };
  return heat;
}
