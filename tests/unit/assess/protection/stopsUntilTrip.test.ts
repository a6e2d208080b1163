import { describe, expect, it } from 'vitest';
import { relayStretch, steadyStretch } from '../../../../src/assess/protection/relayStretches.ts';
import { type RelayStretch, stopsUntilTrip } from '../../../../src/assess/protection/stopsUntilTrip.ts';
import { quadratureOf } from '../../../../src/measure/quadrature.ts';
import { syntheticTrajectory } from '../../../support/syntheticTrajectory.ts';
import { expectAllWithin, expectWithin } from '../../../support/tolerance.ts';

/** τ = 100 s and k = 1.1 at a setting of 10 A: (k·Ir)² = 121 A². */
const RELAY = { k: 1.1, tau: 100 };
const SETTING = 10;

/** An operation that adds a stated heat at once to one phase, then a pause, s. */
function adding(heat: number, pause: number): RelayStretch[] {
  const weighted = heat * RELAY.tau * 121;
  return [
    { duration: 0, weighted: [0, weighted, 0.5 * weighted] },
    { duration: pause, weighted: [0, 0, 0] },
  ];
}

describe('operations until the overload relay trips', () => {
  it('without pause are the heat that is left over the heat of one', () => {
    // 1/0.16 = 6.25 from cold; from warm, 1/1.21 = 0.826, 0.174/0.16 = 1.08
    expect(stopsUntilTrip(RELAY, SETTING, adding(0.16, 1e-9), 0).operations).toBe(6);
    expect(stopsUntilTrip(RELAY, SETTING, adding(0.16, 1e-9), 1 / 1.21).operations).toBe(1);
  });

  it('with a pause follow the geometric series, and lead to its sum', () => {
    // x = e^(−0.2); H_n = 0.25·(1 − x^n)/(1 − x): 0.25, 0.455, 0.622, 0.759, 0.872, 0.964, 1.039
    const { operations, steadyPeak } = stopsUntilTrip(RELAY, SETTING, adding(0.25, 20), 0);
    expect(operations).toBe(6);
    expectWithin(steadyPeak, 0.25 / (1 - Math.exp(-0.2)), { relative: 1e-12 }, 'steady peak');
  });

  it('never come where the sum stays below the trip level', () => {
    // 0.25/(1 − e^(−0.4)) = 0.758
    const { operations, steadyPeak } = stopsUntilTrip(RELAY, SETTING, adding(0.25, 40), 0);
    expect(operations).toBe(Number.POSITIVE_INFINITY);
    expectWithin(steadyPeak, 0.25 / (1 - Math.exp(-0.4)), { relative: 1e-12 }, 'steady peak');
  });

  it('are none where the first one from warm trips it, whatever comes later', () => {
    const { operations, steadyPeak } = stopsUntilTrip(RELAY, SETTING, adding(0.25, 100), 1 / 1.21);
    expect(operations).toBe(0);
    expect(steadyPeak).toBeLessThan(1);
  });

  // k, τ s, trip time s at 6 times the setting from cold: computed from the formula of IEC 60255-149, see the published tests
  it.each([
    [1.05, 465.19, 14.469],
    [1.1, 423.41, 14.476],
    [1.1, 211.71, 7.238],
    [1.1, 1270.23, 43.428],
  ])(
    'of a hundredth of a second at 6 times the setting come to the trip time (k = %f, τ = %f s)',
    (k, tau, time) => {
      const { operations } = stopsUntilTrip({ k, tau }, SETTING, [steadyStretch(60, 0.01, tau)], 0);
      expectWithin(operations / 100, time, { absolute: 0.011 }, 'trip time');
    },
  );
});

describe('what the relay sees', () => {
  it('of a steady current is I²·τ·(1 − e^(−t/τ))', () => {
    const { weighted } = steadyStretch(7, 30, 100);
    const expected = 49 * 100 * (1 - Math.exp(-0.3));
    expectAllWithin(weighted, [expected, expected, expected], { relative: 1e-12 }, 'weighted squares');
  });

  it('of a run are its currents, weighted by their age, between two instants inside cells', () => {
    // i_A = e^(−2.5·t): ∫ e^(−(t₁ − t)/τ)·e^(−5t) dt in closed form; i_B = i_C = −i_A/2
    const trajectory = syntheticTrajectory({ iAlpha: (t) => Math.exp(-2.5 * t) }, [0, 0.3, 1]);
    const [from, to, tau] = [0.0123, 0.9, 8];
    const rate = 1 / tau - 5;
    const expected = (Math.exp(-to / tau) * (Math.exp(rate * to) - Math.exp(rate * from))) / rate;
    const { duration, weighted } = relayStretch(quadratureOf(trajectory), { from, to }, tau);
    expectWithin(duration, 0.8877, { relative: 1e-12 }, 'duration');
    // The weight is constant in a cell of 4 ms: (4 ms/8 s)²/24 and five-point rounding
    expectAllWithin(weighted, [expected, expected / 4, expected / 4], { relative: 1e-6 }, 'weighted squares');
  });
});
