import type { IndependentMetric, IndependentMetrics } from './independentMetric.ts';
import type { PhaseVariableRun } from './phaseVariableModel.ts';
import type { RunReader, Signal } from './runReader.ts';
import type { ScenarioShape } from './scenarioShape.ts';
import { lowestTerminalVoltage } from './terminalVoltage.ts';

/** Torque in the coupling and dip of the terminal voltage in a window; absent where the window does not begin. */
export function stressMetrics(
  out: IndependentMetrics,
  prefix: 'start' | 'plug',
  run: PhaseVariableRun,
  reader: RunReader,
  from: number | null,
  to: number,
): void {
  out[`${prefix}CouplingTorque`] = from === null ? { value: null } : couplingTorque(run, reader, from, to);
  out[`${prefix}VoltageDip`] = from === null ? { value: null } : voltageDip(run, reader, from, to);
}

function couplingTorque(
  run: PhaseVariableRun,
  reader: RunReader,
  from: number,
  to: number,
): IndependentMetric {
  const { train } = run.circuit;
  if (!train.elastic) return { value: null };
  const torque: Signal = {
    value: (y, _f, mode) => train.couplingTorque(y, mode),
    rate: train.couplingTorqueRate,
  };
  const high = reader.extreme(from, to, torque, 1)!;
  const low = reader.extreme(from, to, torque, -1)!;
  return high.value >= -low.value ? high : low;
}

function voltageDip(run: PhaseVariableRun, reader: RunReader, from: number, to: number): IndependentMetric {
  const { value, time } = lowestTerminalVoltage(run, reader.stepsIn(from, to));
  if (value === null) return { value };
  const { lineVoltage } = run.scenario.supply;
  return value === lineVoltage ? { value: 0 } : { value: (lineVoltage - value) / lineVoltage, time: time! };
}

/** Two inertias swinging against each other on a spring, each seen at the motor: Hz; null for a rigid shaft. */
export function torsionalFrequency(scenario: ScenarioShape): number | null {
  const { coupling, gear, inertia } = scenario.load;
  if (!coupling) return null;
  const seen = inertia / (gear?.ratio ?? 1) ** 2;
  const shared = (scenario.machine.inertia * seen) / (scenario.machine.inertia + seen);
  return Math.sqrt(coupling.stiffness / shared) / (2 * Math.PI);
}
