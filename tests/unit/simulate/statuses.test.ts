/** Each status of a run, reached by a real run. */
import { describe, expect, it } from 'vitest';
import { simulate } from '../../../src/measure/simulate.ts';
import type { Scenario } from '../../../src/scenario/scenario.ts';
import { isSuccessful, type RunStatusCode } from '../../../src/simulate/status.ts';
import { ARCING_STARTER, scenarioOf, type Variation } from '../../support/scenarios.ts';
import { KRAUSE } from '../../support/textbookMachines.ts';
import { expectWithin } from '../../support/tolerance.ts';

const fast = { relativeTolerance: 1e-6 };
const zeroSpeedSwitch = { dropOutSpeed: 8, pickUpSpeed: 14, delay: 0.01 };
const plug: Variation = {
  starter: { ...ARCING_STARTER, zeroSpeedSwitch },
  initial: 'runningForward',
  actions: [{ at: 0.01, do: 'plug' }],
  load: { inertia: 0, torques: [{ kind: 'friction', torque: 1, breakaway: 1.5 }] },
  solver: fast,
};
const of = (variation: Variation): Scenario => scenarioOf(KRAUSE.hp3, { ...plug, ...variation });

const RUNS: Readonly<Record<Exclude<RunStatusCode, 'lineToLineShortCircuit'>, Scenario>> = {
  finished: of({}),
  endTimeReached: of({ actions: [], solver: { ...fast, endTime: 0.2 } }),
  switchNeverOpened: of({ solver: { ...fast, endTime: 0.2 } }),
  notSettled: of({
    initial: 'rest',
    actions: [{ at: 0, do: 'startForward' }],
    load: { inertia: 0, torques: [{ kind: 'friction', torque: 400, breakaway: 400 }] },
  }),
  overspeed: of({
    initial: 'rest',
    actions: [{ at: 0, do: 'startForward' }],
    load: { inertia: 0, torques: [{ kind: 'gravity', torque: 400 }] },
  }),
  nonFiniteValue: of({ inertia: 1e-310, load: { inertia: 0, torques: [] } }),
  stepLimit: of({ solver: { ...fast, maxSteps: 10 } }),
};

describe('the status of a run', () => {
  it.each(Object.entries(RUNS))('%s', (code, scenario) => {
    const { status, trajectory } = simulate(scenario);
    expect(status.code).toBe(code);
    expect(isSuccessful(status)).toBe(code === 'finished' || code === 'endTimeReached');
    expect(status.message.length).toBeGreaterThan(15);
    expect(status.message).not.toMatch(/NaN|undefined/);
    expect(status.time).toBeGreaterThanOrEqual(0);
    expect(trajectory.tEnd).toBeLessThanOrEqual(status.time + 1e-12);
  });

  it('of a run cut short leaves the trace up to there readable', () => {
    const { trajectory, metrics, ledger } = simulate(RUNS.stepLimit);
    expect(trajectory.tEnd).toBeGreaterThan(0);
    expect(Number.isFinite(trajectory.at(trajectory.tEnd).torque)).toBe(true);
    expect(ledger.residual).toBeLessThan(1e-6);
    for (const metric of Object.values(metrics))
      if (metric.value !== null) expect(metric.value).not.toBeNaN();
  });

  it('at a stated end time ends exactly there', () => {
    expect(simulate(RUNS.endTimeReached).trajectory.tEnd).toBe(0.2);
  });
});

describe('a dead time shorter than the arcs', () => {
  const hasty = (change: Variation['supply'] = {}) =>
    of({
      starter: { ...ARCING_STARTER, closingTime: 0.015, changeoverDelay: 0, zeroSpeedSwitch },
      supply: change,
    });

  it('ends in a line-to-line short circuit at the touch, with a negative margin', () => {
    const { status, metrics, trajectory } = simulate(hasty());
    expect(status.code).toBe('lineToLineShortCircuit');
    expect(isSuccessful(status)).toBe(false);
    // command 0.01 s, closing time 15 ms
    expectWithin(status.time, 0.025, { absolute: 1e-12 }, 'instant');
    expect(trajectory.tEnd).toBe(status.time);
    expect(['B', 'C']).toContain(trajectory.shortCircuit?.phase);
    expect(metrics.arcMargin.value).toBeLessThan(0);
    expect(status.message).toContain('lengthen the dead time');
  });

  it('would have been long enough by the margin it reports', () => {
    const { metrics } = simulate(hasty());
    const missing = -metrics.arcMargin.value!;
    const longer = (delay: number) =>
      simulate(
        of({ starter: { ...ARCING_STARTER, closingTime: 0.015, changeoverDelay: delay, zeroSpeedSwitch } }),
      ).status;
    expect(longer(missing + 1e-5).code).toBe('finished');
  });

  it('states the prospective current of the source, V/(2·|Z|), or that nothing limits it', () => {
    const impedance = { sourceResistance: 0.01, sourceInductance: 0.1e-3 };
    const expected = 220 / (2 * Math.hypot(0.01, 120 * Math.PI * 0.1e-3));
    const limited = simulate(hasty(impedance));
    expectWithin(
      limited.trajectory.shortCircuit?.prospectiveCurrent,
      expected,
      { relative: 1e-12 },
      'current',
    );
    const unlimited = simulate(hasty());
    expect(unlimited.trajectory.shortCircuit?.prospectiveCurrent).toBe(null);
    expect(unlimited.status.message).toContain('nothing in the scenario limits the current');
  });

  it('on the common phase alone is no fault', () => {
    // The forward pole of terminal A, common to both contactors, is still closed when the reverse poles touch.
    const starter = { ...ARCING_STARTER, openingScatter: [0.1, 0, 0] as const, zeroSpeedSwitch };
    const { status } = simulate(of({ starter }));
    expect(status.code).toBe('finished');
  });
});
