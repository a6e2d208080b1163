import { describe, expect, it } from 'vitest';
import { simulate } from '../../../src/measure/simulate.ts';
import { observeAt, stateBuffer } from '../../../src/simulate/segment.ts';
import { newInstant, type Trajectory } from '../../../src/simulate/trajectory.ts';
import { scenarioOf, type Variation } from '../../support/scenarios.ts';
import { DOUBLE_CAGE, KRAUSE } from '../../support/textbookMachines.ts';
import { expectWithin } from '../../support/tolerance.ts';

/** Magnetic energy just before and just after a segment boundary, J. */
function energies({ segments }: Trajectory, boundary: number): [before: number, after: number] {
  const [left, right] = [segments[boundary - 1]!, segments[boundary]!];
  const at = newInstant();
  observeAt(left, left.steps.at(-1)!, left.t1, stateBuffer(), at);
  const before = at.magneticEnergy;
  observeAt(right, right.steps[0]!, right.t0, stateBuffer(), at);
  return [before, at.magneticEnergy];
}

const opening: Variation = {
  initial: 'runningForward',
  load: { torques: [{ kind: 'gravity', torque: 10 }] },
  actions: [{ at: 0.004, do: 'coast' }],
  solver: { endTime: 0.05 },
};

describe('the energy that ideal poles interrupt', () => {
  it.each([
    ['one cage', KRAUSE.hp3],
    ['two cages', DOUBLE_CAGE],
  ] as const)('is the magnetic energy that vanishes at the opening, %s', (_name, textbook) => {
    const { trajectory, ledger } = simulate(scenarioOf(textbook, opening));
    const [before, after] = energies(trajectory, 1);
    expect(before - after).toBeGreaterThan(0.01);
    expectWithin(ledger.interruptionLoss, before - after, { relative: 1e-9 }, 'interruption loss');
    expect(ledger.residual).toBeLessThan(1e-8);
  });

  it('of poles that open one after the other is the sum of the two drops', () => {
    const scenario = scenarioOf(KRAUSE.hp3, { ...opening, starter: { openingScatter: [0, 0.003, 0.003] } });
    const { trajectory, ledger } = simulate(scenario);
    expect(trajectory.segments.map((segment) => segment.kind)).toEqual(['three', 'two', 'none']);
    const drops = [1, 2].map((boundary) => {
      const [before, after] = energies(trajectory, boundary);
      return before - after;
    });
    expectWithin(ledger.interruptionLoss, drops[0]! + drops[1]!, { relative: 1e-9 }, 'interruption loss');
    expect(ledger.residual).toBeLessThan(1e-8);
  });

  it('is nothing at an instant exchange, and nothing with arcs', () => {
    const exchange = { ...opening, actions: [{ at: 0.004, do: 'startReverse' as const }] };
    expect(simulate(scenarioOf(KRAUSE.hp3, exchange)).ledger.interruptionLoss).toBe(0);
    const arcs = simulate(scenarioOf(KRAUSE.hp3, { ...opening, starter: { poles: 'arcing' } }));
    expectWithin(arcs.ledger.interruptionLoss, 0, { absolute: 1e-9 }, 'with arcs');
    expect(arcs.ledger.residual).toBeLessThan(1e-8);
  });
});
