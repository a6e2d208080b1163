import { describe, expect, it } from 'vitest';
import { GAUSS_POINTS } from '../../../src/numeric/gaussPoints.ts';
import type { OverloadData } from '../../../src/scenario/starterData.ts';
import {
  canReset,
  heatAfter,
  initialHeat,
  type OverloadConstants,
  overloadConstants,
  TRIP_LEVEL,
  tripTimeCold,
  tripTimeHot,
  weightedSquares,
} from '../../../src/starter/overloadRelay.ts';
import { expectWithin } from '../../support/tolerance.ts';

const SETTING = 12;
const FREQUENCY = 50;
const OMEGA = 2 * Math.PI * FREQUENCY;
const CLASS_10 = overloadConstants('10');
/** A motor's relay is fed four times a supply period. */
const QUARTER = 1 / FREQUENCY / 4;

/** Heat after `intervals` intervals of equal length in which the current i(t), A, flows. */
function advance(
  heat: number,
  current: (t: number) => number,
  interval: number,
  intervals: number,
  constants: OverloadConstants,
): number {
  let h = heat;
  for (let n = 0; n < intervals; n++) {
    const squares = GAUSS_POINTS.map(({ x }) => current((n + x) * interval) ** 2);
    h = heatAfter(h, interval, weightedSquares(interval, squares, constants.tau), constants, SETTING);
  }
  return h;
}

/** Heat at time t of a constant current: the solution of the differential equation. */
function heatOf(multiple: number, t: number, heat: number, { k, tau }: OverloadConstants): number {
  return (multiple / k) ** 2 + (heat - (multiple / k) ** 2) * Math.exp(-t / tau);
}

const relay = (start: OverloadData['start']): OverloadData => ({
  setting: SETTING,
  tripClass: '10',
  start,
  memory: 'kept',
});

describe('the memory of one phase', () => {
  it('follows the exponential of a constant current, from any heat', () => {
    for (const multiple of [0, 0.7, 1, 6])
      for (const heat of [0, 0.5, 1.2]) {
        const after = advance(heat, () => multiple * SETTING, 0.25, 40, CLASS_10);
        expectWithin(
          after,
          heatOf(multiple, 10, heat, CLASS_10),
          { relative: 1e-12 },
          `${multiple}, ${heat}`,
        );
      }
  });

  it('reaches the trip level at the analytic trip time', () => {
    const time = tripTimeCold(6, CLASS_10);
    const after = advance(0, () => 6 * SETTING, time / 200, 200, CLASS_10);
    expectWithin(after, TRIP_LEVEL, { relative: 1e-12 }, 'cold');
    const hotTime = tripTimeHot(2, 0.9, CLASS_10);
    const hot = advance((0.9 / CLASS_10.k) ** 2, () => 2 * SETTING, hotTime / 200, 200, CLASS_10);
    expectWithin(hot, TRIP_LEVEL, { relative: 1e-12 }, 'hot');
  });

  it('rises with the square of the current, and falls to 1/e in one time constant without', () => {
    const once = advance(0, () => SETTING, QUARTER, 1, CLASS_10);
    const twice = advance(0, () => 2 * SETTING, QUARTER, 1, CLASS_10);
    expectWithin(twice, 4 * once, { relative: 1e-13 }, 'square');
    expectWithin(
      heatAfter(0.8, CLASS_10.tau, 0, CLASS_10, SETTING),
      0.8 / Math.E,
      { relative: 1e-14 },
      'cooling',
    );
  });

  it('forgets an early current more than a late one', () => {
    const early = [4, 0, 0, 0, 0];
    const late = [0, 0, 0, 0, 4];
    expect(weightedSquares(1, late, 2)).toBeGreaterThan(weightedSquares(1, early, 2));
  });

  it('of an interval is that of its two halves', () => {
    const current = (t: number) => SETTING * (3 + Math.sin(t));
    const whole = advance(0.2, current, 1, 1, CLASS_10);
    const halves = advance(0.2, current, 0.5, 2, CLASS_10);
    expectWithin(halves, whole, { relative: 1e-9 }, 'halves');
  });
});

describe('a sinusoidal current heats as its r.m.s. value', () => {
  // i² swings at 2ω about its mean with the amplitude of the mean, so H swings by mean/(2ωτ) about the mean's exponential.
  const ripple = (multiple: number) => (multiple / CLASS_10.k) ** 2 / (2 * OMEGA * CLASS_10.tau);
  const wave = (multiple: number, angle: number) => (t: number) =>
    Math.SQRT2 * multiple * SETTING * Math.cos(OMEGA * t + angle);

  it.each([0, 0.4, Math.PI / 2])('to twice the ripple mean/(2ωτ), with the angle %f rad', (angle) => {
    // Starting on the mean's exponential, H is off it by the ripple and the ripple's own starting value.
    for (const quarters of [1, 2, 3, 4, 1001])
      expectWithin(
        advance(0, wave(6, angle), QUARTER, quarters, CLASS_10),
        heatOf(6, quarters * QUARTER, 0, CLASS_10),
        { absolute: 2 * ripple(6) },
        `${quarters} quarters`,
      );
  });

  it('and after whole periods to the quadrature alone', () => {
    const after = advance(0, wave(6, 0.4), QUARTER, 4 * 250, CLASS_10);
    // What is left of the ripple is its value at the start, of which e^(−5 s/τ) remains to be taken off: 1.7 % of it.
    expectWithin(after, heatOf(6, 5, 0, CLASS_10), { relative: 1e-6, absolute: ripple(6) / 50 }, 'after 5 s');
  });

  it('and the ripple is there: within a period the heat is not that of the r.m.s. value', () => {
    const after = advance(0, wave(6, 0), QUARTER / 2, 1, CLASS_10);
    expect(Math.abs(after - heatOf(6, QUARTER / 2, 0, CLASS_10))).toBeGreaterThan(ripple(6) / 2);
  });

  it('while a direct-current part adds its square', () => {
    const after = advance(0, (t) => wave(6, 0)(t) + 4 * SETTING, QUARTER, 4 * 250, CLASS_10);
    // The product of the two parts swings at ω.
    const product = (2 * 4 * 6 * Math.SQRT2) / CLASS_10.k ** 2 / (OMEGA * CLASS_10.tau);
    expectWithin(
      after,
      heatOf(Math.hypot(6, 4), 5, 0, CLASS_10),
      { relative: 1e-6, absolute: (ripple(6) + product) / 50 },
      'with a direct part',
    );
  });
});

describe('with one phase lost', () => {
  it('the two that carry heat alike and trip at the time of their own current; the third cools', () => {
    const carried = (t: number) => Math.SQRT2 * 3 * SETTING * Math.cos(OMEGA * t);
    const periods = Math.round(tripTimeCold(3, CLASS_10) * FREQUENCY);
    const currents = [carried, (t: number) => -carried(t), () => 0];
    const heats = currents.map((i) => advance(0.3, i, QUARTER, 4 * periods, CLASS_10));
    expect(heats[1]).toBe(heats[0]);
    expectWithin(
      heats[2],
      0.3 * Math.exp(-periods / FREQUENCY / CLASS_10.tau),
      { relative: 1e-10 },
      'the third',
    );
    const fromCold = currents.map((i) => advance(0, i, QUARTER, 4 * periods, CLASS_10));
    expectWithin(Math.max(...fromCold), TRIP_LEVEL, { relative: 1e-3 }, 'hottest');
    expect(fromCold[2]).toBe(0);
  });
});

describe('start and reset', () => {
  it('cold is no heat; warm is the heat that the setting keeps up', () => {
    expect(initialHeat(relay('cold'))).toBe(0);
    const warm = initialHeat(relay('warm'));
    expectWithin(warm, 1 / CLASS_10.k ** 2, { relative: 1e-14 }, 'warm');
    expectWithin(
      advance(warm, () => SETTING, 1, 60, CLASS_10),
      warm,
      { relative: 1e-12 },
      'after a minute at the setting',
    );
  });

  it('warm trips sooner than cold by the preload formula', () => {
    const time = tripTimeHot(6, 1, CLASS_10);
    expect(time).toBeLessThan(tripTimeCold(6, CLASS_10) / 4);
    const after = advance(initialHeat(relay('warm')), () => 6 * SETTING, time / 50, 50, CLASS_10);
    expectWithin(after, TRIP_LEVEL, { relative: 1e-12 }, 'warm');
  });

  it('a relay that has just tripped cannot be reset; one as warm as from long running can', () => {
    expect(canReset(TRIP_LEVEL)).toBe(false);
    expect(canReset(initialHeat(relay('warm')))).toBe(true);
    expect(canReset(0)).toBe(true);
  });
});

describe('the trip time', () => {
  it('is infinite at and below k, and grows without bound towards it', () => {
    for (const multiple of [0, 0.5, 1, 1.05, CLASS_10.k]) {
      expect(tripTimeCold(multiple, CLASS_10)).toBe(Number.POSITIVE_INFINITY);
      expect(tripTimeHot(multiple, 0.9, CLASS_10)).toBe(Number.POSITIVE_INFINITY);
    }
    expect(tripTimeCold(CLASS_10.k * (1 + 1e-9), CLASS_10)).toBeGreaterThan(19 * CLASS_10.tau);
  });

  it('is nothing where the preload alone has tripped the relay', () => {
    expect(tripTimeHot(6, CLASS_10.k, CLASS_10)).toBe(0);
    expect(tripTimeHot(1, 1.2, CLASS_10)).toBe(0);
  });

  it('hot from no preload is the cold one, and a greater preload or current shortens it', () => {
    expect(tripTimeHot(3, 0, CLASS_10)).toBe(tripTimeCold(3, CLASS_10));
    expect(tripTimeHot(3, 0.5, CLASS_10)).toBeLessThan(tripTimeCold(3, CLASS_10));
    expect(tripTimeHot(3, 1, CLASS_10)).toBeLessThan(tripTimeHot(3, 0.5, CLASS_10));
    expect(tripTimeCold(4, CLASS_10)).toBeLessThan(tripTimeCold(3, CLASS_10));
  });
});
