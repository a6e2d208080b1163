import { describe, expect, it } from 'vitest';
import { firstCrossing } from '../../src/simulate/firstCrossing.ts';
import { integrate, type OdeProblem } from '../../src/simulate/integrate.ts';
import { makeStep, makeWatch } from '../support/makeStep.ts';
import { expectWithin } from '../support/tolerance.ts';

const PERIOD = 0.02;

describe('firstCrossing', () => {
  it('does not fire on a function that is zero where the segment begins', () => {
    const falling = makeStep(0, 0.01, (t) => -t);
    const rising = makeStep(0, 0.01, (t) => t);
    expect(firstCrossing(falling, [makeWatch('falling'), makeWatch('either')], PERIOD)).toBe(null);
    expect(firstCrossing(rising, [makeWatch('rising'), makeWatch('either')], PERIOD)).toBe(null);
  });

  it('fires when a function that began at its root comes back to it', () => {
    const step = makeStep(0, 0.02, (t) => Math.sin(2 * Math.PI * 50 * t));
    expectWithin(firstCrossing(step, [makeWatch('either')], PERIOD)?.t, 0.01, { absolute: 1e-12 }, 'return');
  });

  it('heeds the direction', () => {
    const step = makeStep(0, 1, (t) => Math.cos(t * 2 * Math.PI));
    expectWithin(
      firstCrossing(step, [makeWatch('falling')], PERIOD)?.t,
      0.25,
      { absolute: 1e-12 },
      'falling',
    );
    expectWithin(firstCrossing(step, [makeWatch('rising')], PERIOD)?.t, 0.75, { absolute: 1e-12 }, 'rising');
    expectWithin(firstCrossing(step, [makeWatch('either')], PERIOD)?.t, 0.25, { absolute: 1e-12 }, 'either');
    expect(
      firstCrossing(
        makeStep(0, 0.2, (t) => t + 1),
        [makeWatch('either')],
        PERIOD,
      ),
    ).toBe(null);
  });

  it('finds a double crossing inside a step whose ends have the same sign', () => {
    // Two roots 1/20 period apart, farther than the probes are.
    const [a, b] = [0.0115, 0.0115 + PERIOD / 20];
    const step = makeStep(0, PERIOD, (t) => (t - a) * (t - b));
    expectWithin(
      firstCrossing(step, [makeWatch('either')], PERIOD)?.t,
      a,
      { absolute: 1e-12 },
      'first of the two',
    );
  });

  it('takes the earliest of several events, whatever their order in the list', () => {
    const step = makeStep(0, PERIOD, (t) => t - 0.0101);
    const early = makeWatch('rising', -0.0001);
    const late = makeWatch('rising', 0);
    for (const list of [
      [early, late],
      [late, early],
    ])
      expect(firstCrossing(step, list, PERIOD)?.watch).toBe(early);
  });

  it('fires on a root exactly at the end of the step', () => {
    const step = makeStep(0, 0.01, (t) => 0.01 - t);
    expect(firstCrossing(step, [makeWatch('falling')], PERIOD)?.t).toBe(0.01);
  });

  it('probes a long step of speed at least eight times a period', () => {
    // Both roots lie between the ends of a step of ten periods.
    const step = makeStep(0, 10 * PERIOD, (t) => (t - 0.091) * (t - 0.091 - PERIOD / 7));
    expectWithin(
      firstCrossing(step, [makeWatch('either', 0, 'speed')], PERIOD)?.t,
      0.091,
      { absolute: 1e-12 },
      'root',
    );
  });
});

describe('an event on an integrated solution', () => {
  it('is located to 1e-9 s with bounded work', () => {
    // x'' = −x from x = 1: falls through 0 at π/2, rises at 3π/2.
    const circle: OdeProblem = {
      size: 2,
      derivatives: (_t, y, dydt) => {
        dydt[0] = y[1]!;
        dydt[1] = -y[0]!;
      },
    };
    const stats = { evaluations: 0, steps: 0 };
    const options = { relativeTolerance: 1e-11, absoluteTolerance: [1e-11, 1e-11], stats, maxSteps: 1000 };
    for (const [crossing, root] of [
      ['falling', Math.PI / 2],
      ['rising', (3 * Math.PI) / 2],
    ] as const) {
      let found: number | null = null;
      for (const step of integrate(circle, 0, [1, 0], 10, options)) {
        found = firstCrossing(step, [makeWatch(crossing)], 2 * Math.PI)?.t ?? null;
        if (found !== null) break;
      }
      expectWithin(found, root, { absolute: 1e-9 }, crossing);
    }
    expect(stats.evaluations).toBeLessThan(1000);
  });
});
