import type { Scenario } from '../../src/scenario/scenario.ts';
import { runTrajectory } from '../../src/simulate/run.ts';
import type { Point, Trajectory } from '../../src/simulate/trajectory.ts';
import { errorInTolerances } from './tolerance.ts';

/** Runs of the same physics in two descriptions, with how a reading of the second is had from one of the first. */
export interface Comparison {
  readonly first: Scenario;
  readonly second: Scenario;
  /** What the second run should show where the first shows this. */
  readonly map?: (point: Point) => Partial<Point>;
}

/** Readings compared, with the size that their error is measured against. */
const SCALES: Partial<Record<keyof Point, (t: Trajectory) => number>> = {
  iA: currentScale,
  iB: currentScale,
  iC: currentScale,
  torque: torqueScale,
  speed: ({ scenario }) => (2 * Math.PI * scenario.supply.frequency) / scenario.machine.polePairs,
};

function currentScale({ scenario }: Trajectory): number {
  const { supply, machine } = scenario;
  const leakage = machine.Lls + machine.cages[0]!.Llr;
  return (supply.lineVoltage * Math.sqrt(2 / 3)) / (2 * Math.PI * supply.frequency * leakage);
}

function torqueScale(trajectory: Trajectory): number {
  const { supply, machine } = trajectory.scenario;
  const flux = (supply.lineVoltage * Math.sqrt(2 / 3)) / (2 * Math.PI * supply.frequency);
  return 1.5 * machine.polePairs * flux * currentScale(trajectory);
}

/**
 * Demands that two runs show the same at evenly spread instants, away from switchings.
 * @param allowed error as a fraction of locked-rotor current, its torque and synchronous speed
 */
export function expectSameRun({ first, second, map = (point) => point }: Comparison, allowed: number): void {
  const a = runTrajectory(first);
  const b = runTrajectory(second);
  if (a.status.code !== b.status.code)
    throw new Error(`${a.status.code} against ${b.status.code}: ${b.status.message}`);
  const end = Math.min(a.tEnd, b.tEnd);
  for (let k = 0; k <= 60; k++) {
    const t = (end * (k + 0.37)) / 61;
    const expected = map(a.at(t));
    const actual = b.at(t);
    for (const [name, scaleOf] of Object.entries(SCALES) as [keyof Point, (t: Trajectory) => number][]) {
      const error = errorInTolerances(actual[name], expected[name] ?? Number.NaN, {
        absolute: allowed * scaleOf(a),
      });
      if (error > 1)
        throw new Error(
          `${name} at ${t} s: ${expected[name]} against ${actual[name]}, ${error.toPrecision(3)} times the tolerance`,
        );
    }
  }
}
