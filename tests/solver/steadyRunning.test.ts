/**
 * A machine that only runs on in its steady state: the solution is constant in synchronous axes, steps grow until the solver
 * meets its stability limit, and its last step before the end may be rejected. (The package then read a number that was not there
 * and went on with a step that was not a number.)
 */
import { describe, expect, it } from 'vitest';
import { run } from '../support/readings.ts';
import { scenarioOf } from '../support/scenarios.ts';
import { DOUBLE_CAGE, KRAUSE } from '../support/textbookMachines.ts';
import { expectWithin } from '../support/tolerance.ts';

describe.each([
  ['3 hp', KRAUSE.hp3],
  ['50 hp', KRAUSE.hp50],
  ['double-cage', DOUBLE_CAGE],
] as const)('a %s machine running on in its steady state', (_name, textbook) => {
  it.each([1e-6, 1e-8, 1e-9, 1e-10])('keeps its speed to the end at tolerance %d', (relativeTolerance) => {
    for (const torque of [-10, -5, 3, 10])
      for (const endTime of [0.05, 0.2]) {
        const { trajectory } = run(
          scenarioOf(textbook, {
            initial: 'runningForward',
            load: { torques: [{ kind: 'gravity', torque }] },
            solver: { endTime, relativeTolerance },
          }),
        );
        expect(trajectory.tEnd).toBe(endTime);
        const [first, last] = [trajectory.at(0), trajectory.at(endTime)];
        // Errors of some tens of steps, of synchronous speed and of the pull-out torque.
        const allowed = 100 * relativeTolerance;
        expectWithin(last.speed, first.speed, { relative: allowed }, 'speed');
        expectWithin(last.torque, torque, { absolute: 1000 * allowed }, 'torque');
      }
  });
});
