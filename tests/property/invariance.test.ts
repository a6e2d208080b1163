/** Descriptions of the same physics give the same run. Errors of some hundred steps add up, and
 * light machines swing them up: a thousand times the integration's tolerance is allowed. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { runTrajectory } from '../../src/simulate/run.ts';
import type { Point } from '../../src/simulate/trajectory.ts';
import { FEW, reversal } from '../support/arbitraryScenario.ts';
import { expectSameRun } from '../support/readingsOf.ts';
import { startAtOnce } from '../support/scenarios.ts';
import { KRAUSE } from '../support/textbookMachines.ts';
import { expectWithin } from '../support/tolerance.ts';

/** For runs at a tolerance of 1e-8. */
const ALLOWED = 1e-5;
const THIRD = (2 * Math.PI) / 3;

/** The machine's windings, contactor poles and mains renamed in a circle: A → B → C → A. */
function renamed(scenario: Scenario): Scenario {
  const moved = { AB: 'BC', BC: 'CA', CA: 'AB' } as const;
  const turn = ([a, b, c]: readonly [number, number, number]) => [c, a, b] as const;
  const { starter, supply } = scenario;
  return {
    ...scenario,
    // What was phase A of the mains is now called B: its angle is that of the new A less a third of a turn.
    supply: { ...supply, angle: supply.angle + THIRD },
    starter: {
      ...starter,
      exchangedPhases: moved[starter.exchangedPhases],
      closingScatter: turn(starter.closingScatter),
      openingScatter: turn(starter.openingScatter),
    },
  };
}

describe('the same run', () => {
  it('in the stationary frame and in the frame that suits the conducting set', () => {
    fc.assert(
      fc.property(reversal, (first) => {
        expectSameRun(
          { first, second: { ...first, solver: { ...first.solver, frame: 'stationary' } } },
          1e-6,
        );
      }),
      FEW,
    );
  });

  it('with the phases renamed in a circle, the exchanged pair and the supply angle with them', () => {
    const map = ({ iA, iB, iC, ...rest }: Point) => ({ ...rest, iB: iA, iC: iB, iA: iC });
    fc.assert(
      fc.property(reversal, (first) => expectSameRun({ first, second: renamed(first), map }, ALLOWED)),
      FEW,
    );
  });

  it('with A and B exchanged instead of B and C and the closing angle moved to match', () => {
    // Reversed supply vectors: BC e^{−j(ωt+φ)}, AB e^{−j(ωt+φ)}·e^{j2π/3}; the residual flux follows φ. Equal angles between them
    // need φ' = φ + π/3 without arcs; torque, speed and the size of the current vector then agree.
    fc.assert(
      fc.property(reversal, fc.double({ min: -3, max: 3, noNaN: true }), (base, angle) => {
        const starter = {
          ...base.starter,
          poles: 'ideal' as const,
          closingScatter: [0, 0, 0] as const,
          openingScatter: [0, 0, 0] as const,
        };
        const bc: Scenario = {
          ...base,
          supply: { ...base.supply, angle },
          starter: { ...starter, exchangedPhases: 'BC' },
        };
        const ab: Scenario = {
          ...base,
          supply: { ...base.supply, angle: angle + THIRD / 2 },
          starter: { ...starter, exchangedPhases: 'AB' },
        };
        const [a, b] = [runTrajectory(bc), runTrajectory(ab)];
        const trace = a.sample(0, a.tEnd, 400);
        const scale = Math.max(...trace.torque.map(Math.abs));
        const crest = Math.max(...trace.iA.map(Math.abs), ...trace.iB.map(Math.abs));
        const size = (point: Point) => Math.hypot(point.iA, point.iB, point.iC);
        for (let k = 0; k < 60; k++) {
          const t = (0.3 * (k + 0.4)) / 60;
          expectWithin(b.at(t).torque, a.at(t).torque, { absolute: ALLOWED * scale }, `torque at ${t}`);
          expectWithin(
            b.at(t).speed,
            a.at(t).speed,
            { absolute: ALLOWED * Math.abs(a.at(0).speed) },
            `speed at ${t}`,
          );
          expectWithin(size(b.at(t)), size(a.at(t)), { absolute: ALLOWED * crest }, `current at ${t}`);
        }
      }),
      FEW,
    );
  });

  it('mirrored: reverse run first, exchanged phases swapped in every reading', () => {
    // A mirror that leaves A and swaps B and C turns forward with B, C exchanged into reverse.
    const map = ({ iB, iC, torque, speed, ...rest }: Point) => ({
      ...rest,
      iB: iC,
      iC: iB,
      torque: -torque,
      speed: -speed,
    });
    fc.assert(
      fc.property(reversal, (base) => {
        const swap = ([a, b, c]: readonly [number, number, number]) => [a, c, b] as const;
        const first: Scenario = { ...base, starter: { ...base.starter, exchangedPhases: 'BC' } };
        const second: Scenario = {
          ...first,
          starter: {
            ...first.starter,
            closingScatter: swap(first.starter.closingScatter),
            openingScatter: swap(first.starter.openingScatter),
          },
          initial: 'runningReverse',
          actions: first.actions.map((action) => ({ ...action, do: 'startForward' })),
        };
        expectSameRun({ first, second, map }, ALLOWED);
      }),
      FEW,
    );
  });

  it('within tolerance when the tolerance is tightened', () => {
    fc.assert(
      fc.property(reversal, (first) => {
        const at = (relativeTolerance: number): Scenario => ({
          ...first,
          solver: { ...first.solver, relativeTolerance },
        });
        expectSameRun({ first: at(1e-10), second: at(1e-8) }, ALLOWED);
        expectSameRun({ first: at(1e-10), second: at(1e-6) }, 100 * ALLOWED);
      }),
      FEW,
    );
  });

  it('to the last bit when it is repeated', () => {
    fc.assert(
      fc.property(reversal, (scenario) => {
        const [a, b] = [runTrajectory(scenario), runTrajectory(scenario)];
        for (const t of [0.001, 0.05, 0.17, 0.3]) expect(b.at(t)).toEqual(a.at(t));
        expect(b.stats).toEqual(a.stats);
      }),
      { ...FEW, numRuns: 3 },
    );
  });
});

describe('a start from rest', () => {
  it('has torque, speed and current vector that do not depend on the supply angle', () => {
    const reference = runTrajectory(startAtOnce(KRAUSE.hp50, 0.2));
    const size = (point: Point) => Math.hypot(point.iA, point.iB, point.iC);
    for (const angle of [0.3, 1.2, 2.7, -1]) {
      const turned = runTrajectory(startAtOnce(KRAUSE.hp50, 0.2, { supply: { angle } }));
      for (const t of [0.003, 0.011, 0.05, 0.19]) {
        const [a, b] = [reference.at(t), turned.at(t)];
        // 1e-7 of the torque swing and of the inrush
        expectWithin(b.torque, a.torque, { absolute: 2e-4 }, 'torque');
        expectWithin(b.speed, a.speed, { absolute: 1e-6 }, 'speed');
        expectWithin(size(b), size(a), { absolute: 7e-5 }, 'current');
        if (Math.abs(b.iA - a.iA) < 1) throw new Error('phase currents must depend on the angle');
      }
    }
  });
});
