import { type InsertedParts, NOTHING } from './phaseCircuit.ts';
import type { PhaseVariableRun } from './phaseVariableModel.ts';
import type { RunReader } from './runReader.ts';
import { steadySpeed } from './steadyCircuit.ts';

/** A motor counts as having run up at this fraction of its steady speed. */
const RUN_UP = 0.95;

/** What is inserted decides the steady speed. Instant at which the run-up speed in a direction is first reached after `from`. */
export function runUp(
  run: PhaseVariableRun,
  reader: RunReader,
  from: number,
  to: number,
  direction: 1 | -1,
  inserted: InsertedParts = NOTHING,
) {
  const steady = steadySpeed(run.scenario, direction, inserted);
  if (steady === null) return null;
  const omega = run.circuit.index.omega;
  return reader.firstRise(from, to, (y) => direction * (y[omega]! - RUN_UP * steady));
}
