/** Laws that hold in every run. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { integral, quadratureOf } from '../../src/measure/quadrature.ts';
import { simulate } from '../../src/measure/simulate.ts';
import { runTrajectory } from '../../src/simulate/run.ts';
import { FEW, reversal } from '../support/arbitraryScenario.ts';
import { scenarioOf, startAtOnce } from '../support/scenarios.ts';
import { DOUBLE_CAGE, KRAUSE } from '../support/textbookMachines.ts';
import { expectWithin } from '../support/tolerance.ts';

describe('in every reversal', () => {
  it('the energy ledger closes below 1e-6 and no warning is given', () => {
    fc.assert(
      fc.property(reversal, (scenario) => {
        const { ledger, warnings, status } = simulate(scenario);
        expect(status.code).toBe('endTimeReached');
        expect(ledger.residual).toBeLessThan(1e-6);
        expect(warnings).toEqual([]);
        for (const heat of [ledger.sourceLoss, ledger.statorLoss, ...ledger.rotorLoss, ledger.frictionLoss])
          expect(heat).toBeGreaterThanOrEqual(0);
      }),
      { ...FEW, numRuns: 16 },
    );
  });

  it('the three line currents add up to nothing, and an open terminal carries none', () => {
    fc.assert(
      fc.property(reversal, (scenario) => {
        const trajectory = runTrajectory(scenario);
        for (const { t0, t1, kind, openPhase } of trajectory.segments) {
          const { iA, iB, iC } = trajectory.at((t0 + t1) / 2);
          const size = Math.hypot(iA, iB, iC);
          expectWithin(iA + iB + iC, 0, { absolute: 1e-12 * (size + 1) }, 'sum of currents');
          if (kind === 'none') expect(size).toBe(0);
          if (openPhase !== null)
            expectWithin(
              { A: iA, B: iB, C: iC }[openPhase],
              0,
              { absolute: 1e-12 * (size + 1) },
              'open terminal',
            );
        }
      }),
      FEW,
    );
  });

  it('every pole clears at a current zero, and no flux jumps', () => {
    fc.assert(
      fc.property(reversal, (scenario) => {
        const trajectory = runTrajectory(scenario);
        const { supply } = scenario;
        const flux = (supply.lineVoltage * Math.sqrt(2 / 3)) / (2 * Math.PI * supply.frequency);
        for (const segment of trajectory.segments.slice(1)) {
          const [left, right] = [trajectory.at(segment.t0, 'left'), trajectory.at(segment.t0, 'right')];
          for (const name of ['psiAlpha', 'psiBeta', 'psiRAlpha', 'psiRBeta'] as const)
            expectWithin(right[name], left[name], { absolute: 1e-8 * flux }, `${name} at ${segment.t0}`);
        }
      }),
      FEW,
    );
  });

  it('the first torque works against the motion while plugging, and power flows in', () => {
    fc.assert(
      fc.property(reversal, fc.boolean(), (base, mirrored) => {
        const scenario = mirrored
          ? {
              ...base,
              initial: 'runningReverse' as const,
              actions: [{ at: 0.004, do: 'startForward' as const }],
            }
          : base;
        const trajectory = runTrajectory(scenario);
        const quadrature = quadratureOf(trajectory);
        const incoming = mirrored ? 'forward' : 'reverse';
        const touches = trajectory.events.filter(
          (event) => event.kind === 'poleTouches' && event.contactor === incoming,
        );
        const from = touches.at(-1)!.t;
        const zero = trajectory.events.find((event) => event.kind === 'zeroSpeed')?.t ?? trajectory.tEnd;
        // Whole supply periods, so that stored energy that swings to and fro does not count.
        const period = 1 / scenario.supply.frequency;
        const to = from + period * Math.floor((zero - from) / period);
        if (to <= from) return;
        expect(integral(quadrature, 'airGapPower', from, to)).toBeLessThan(0);
        expect(integral(quadrature, 'sourcePower', from, to)).toBeGreaterThan(0);
      }),
      { ...FEW, numRuns: 12 },
    );
  });
});

describe('a machine that drives its load', () => {
  it.each([
    ['forward', 'startForward', 1],
    ['reverse', 'startReverse', -1],
  ] as const)('%s has torque and speed of one sign, once up to speed', (_name, action, sign) => {
    const scenario = scenarioOf(DOUBLE_CAGE, {
      load: { inertia: 0, torques: [{ kind: 'fan', coefficient: 0.01 }] },
      actions: [{ at: 0, do: action }],
      solver: { endTime: 0.6 },
    });
    const { torque, speed } = runTrajectory(scenario).at(0.6);
    expect(Math.sign(torque)).toBe(sign);
    expect(Math.sign(speed)).toBe(sign);
    expect(torque * speed).toBeGreaterThan(0);
  });
});

describe('rest', () => {
  it('without a closed contactor stays rest', () => {
    const trajectory = runTrajectory(scenarioOf(KRAUSE.hp50, { solver: { endTime: 2 } }));
    for (const t of [0, 0.7, 2]) {
      const { speed, position, torque, iA, uAlpha, psiAlpha, psiRBeta } = trajectory.at(t);
      expect([speed, position, torque, iA, uAlpha, psiAlpha, psiRBeta].map(Math.abs)).toEqual([
        0, 0, 0, 0, 0, 0, 0,
      ]);
    }
  });

  it('with one pole closed alone stays rest: no circuit is complete', () => {
    const one = startAtOnce(KRAUSE.hp50, 0.5, { starter: { closingScatter: [0, 9, 9] } });
    const { iA, speed } = runTrajectory(one).at(0.5);
    expect([iA, speed]).toEqual([0, 0]);
  });
});

describe('a settled machine', () => {
  it('draws the current and gives the torque of the equivalent circuit at its slip', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 1, noNaN: true }), (share) => {
        const torque = 14 * share;
        const scenario = startAtOnce(KRAUSE.hp3, 1.5, { load: { torques: [{ kind: 'gravity', torque }] } });
        // A hoist that cannot hold its load at first is lifted all the same: starting torque 53 N·m.
        expectWithin(runTrajectory(scenario).at(1.5).torque, torque, { absolute: 1e-4 }, 'torque');
      }),
      { ...FEW, numRuns: 4 },
    );
  });
});
