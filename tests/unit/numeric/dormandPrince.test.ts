import { describe, expect, it } from 'vitest';
import { type Derivatives, dormandPrince, INTERPOLANT_TERMS } from '../../../src/numeric/dormandPrince.ts';
import { PolynomialStep } from '../../../src/simulate/step.ts';
import { expectAllWithin, expectWithin } from '../../support/tolerance.ts';

/** Tolerances so wide that an estimated error is never above 1. */
const WIDE = 1e3;

/** One step of length h from (t, y): its end, its estimated error and its interpolant. */
function oneStep(f: Derivatives, t: number, y: readonly number[], h: number, tolerance = [WIDE, WIDE]) {
  const n = y.length;
  const method = dormandPrince(f, y, t, tolerance[0]!, new Array<number>(n).fill(tolerance[1]!));
  const error = method.attempt(t, h);
  method.finish(t, h);
  const terms = new Float64Array(INTERPOLANT_TERMS * n);
  method.interpolant(t, h, terms, 0);
  const step = new PolynomialStep(t, t + h, t, h, n, terms, 0);
  const at = (share: number) => y.map((_, i) => step.value(i, t + share * h));
  return { end: [...method.end], error, at };
}

/** State after equal steps. */
function equalSteps(f: Derivatives, t0: number, y0: readonly number[], h: number, count: number): number[] {
  const method = dormandPrince(f, y0, t0, WIDE, new Array<number>(y0.length).fill(WIDE));
  for (let k = 0; k < count; k++) {
    const t = t0 + k * h;
    method.attempt(t, h);
    method.finish(t, h);
    method.advance();
  }
  return [...method.y];
}

function largestDifference(a: readonly number[], b: readonly number[]): number {
  return Math.max(...a.map((value, i) => Math.abs(value - b[i]!)));
}

/** A planet about a sun: [x, y, vx, vy], period 2π, half the long axis 1. */
const KEPLER: Derivatives = (_t, y, dydt) => {
  const r = Math.hypot(y[0]!, y[1]!);
  dydt[0] = y[2]!;
  dydt[1] = y[3]!;
  dydt[2] = -y[0]! / r ** 3;
  dydt[3] = -y[1]! / r ** 3;
};
const ECCENTRICITY = 0.4;

/** Exact solution by Kepler's equation t = E − e·sin E, from the point next to the sun at t = 0. */
function planet(t: number): number[] {
  const e = ECCENTRICITY;
  let E = t;
  for (let k = 0; k < 50; k++) E -= (E - e * Math.sin(E) - t) / (1 - e * Math.cos(E));
  const b = Math.sqrt(1 - e * e);
  const rate = 1 / (1 - e * Math.cos(E));
  return [Math.cos(E) - e, b * Math.sin(E), -rate * Math.sin(E), rate * b * Math.cos(E)];
}

/** y' = y²·cos t with y = 1/(2 − sin t): not linear, and driven by time. */
const BERNOULLI: Derivatives = (t, y, dydt) => {
  dydt[0] = y[0]! * y[0]! * Math.cos(t);
};
const bernoulli = (t: number) => 1 / (2 - Math.sin(t));

describe('orders of the method', () => {
  it('has errors that fall with the eighth power of the step', () => {
    const kepler = [64, 128].map((count) =>
      largestDifference(equalSteps(KEPLER, 0, planet(0), 6 / count, count), planet(6)),
    );
    const driven = [8, 16].map((count) =>
      Math.abs(equalSteps(BERNOULLI, 0, [0.5], 3 / count, count)[0]! - bernoulli(3)),
    );
    for (const [coarse, fine] of [kepler, driven]) {
      expect(fine).toBeGreaterThan(1e-14);
      expect(coarse! / fine!).toBeGreaterThan(2 ** 7);
      expect(coarse! / fine!).toBeLessThan(2 ** 9.5);
    }
  });

  it('has one step errors of the ninth power at its end and of the eighth within, as a continuous extension of order 7', () => {
    // Both steps begin in the same place, so that the leading terms are those of the same derivatives.
    const start = planet(1.3);
    const [coarse, fine] = [0.3, 0.15].map((h) => {
      const { end, at } = oneStep(KEPLER, 1.3, start, h);
      return [
        largestDifference(end, planet(1.3 + h)),
        ...[0.25, 0.5, 0.75].map((share) => largestDifference(at(share), planet(1.3 + share * h))),
      ];
    });
    expect(Math.log2(coarse![0]! / fine![0]!)).toBeGreaterThan(8.4);
    for (const k of [1, 2, 3]) {
      const order = Math.log2(coarse![k]! / fine![k]!);
      expect(order).toBeGreaterThan(7.4);
      expect(order).toBeLessThan(8.5);
    }
  });

  it('estimates its error with the eighth power of the step, and from above', () => {
    // Hairer, Nørsett, Wanner, II.10: err = err5·err5/√(err5² + 0.01·err3²) = O(h⁸) (from memory).
    const start = planet(1.3);
    const estimates = [0.1, 0.05].map((h) => oneStep(KEPLER, 1.3, start, h, [0, 1]).error);
    expect(Math.log2(estimates[0]! / estimates[1]!)).toBeGreaterThan(7);
    expect(Math.log2(estimates[0]! / estimates[1]!)).toBeLessThan(9);
    for (const h of [0.4, 0.2, 0.1]) {
      const { end, error } = oneStep(KEPLER, 1.3, start, h, [0, 1]);
      expect(error).toBeGreaterThan(largestDifference(end, planet(1.3 + h)));
    }
  });

  it.each([0, 1, 2, 3, 4, 5, 6, 7])('integrates t to the power %d exactly in one step', (k) => {
    const power: Derivatives = (t, _y, dydt) => {
      dydt[0] = t ** k;
    };
    const exact = (t: number) => t ** (k + 1) / (k + 1);
    const { end, at } = oneStep(power, 0.25, [exact(0.25)], 1.5);
    // Weights of up to 5.8 and ten terms: a few units in the last place of the largest.
    expectWithin(end[0], exact(1.75), { relative: 1e-14 }, `power ${k}`);
    // The continuous extension is a polynomial of degree 7.
    if (k > 6) return;
    for (const share of [0.1, 0.3, 0.5, 0.7, 0.9])
      expectWithin(at(share)[0], exact(0.25 + 1.5 * share), { absolute: 1e-13 * exact(1.75) }, `at ${share}`);
  });

  it('does not integrate the eighth power exactly: the test above can fail', () => {
    const power: Derivatives = (t, _y, dydt) => {
      dydt[0] = t ** 8;
    };
    expect(Math.abs(oneStep(power, 0, [0], 1).end[0]! - 1 / 9)).toBeGreaterThan(1e-8);
  });

  it('multiplies y in y’ = y by the exponential series up to its eighth power', () => {
    const growth: Derivatives = (_t, y, dydt) => {
      dydt[0] = y[0]!;
    };
    let series = 0;
    let term = 1;
    for (let k = 0; k <= 8; term /= ++k) series += term;
    // What is left are powers nine to twelve of z: 1/9! is 2.8e-6 of z⁹.
    for (const h of [0.1, 0.2])
      expectWithin(
        oneStep(growth, 0, [1], h).end[0],
        Math.exp(h),
        { absolute: 3e-6 * h ** 9 + 1e-15 },
        'end',
      );
    expect(Math.abs(oneStep(growth, 0, [1], 1).end[0]! - series)).toBeLessThan(3e-6);
  });
});

describe('the interpolant of a step', () => {
  it('has state and slope of the solver at both ends', () => {
    const [t, h] = [0.7, 0.3];
    const start = planet(t);
    const { end, at } = oneStep(KEPLER, t, start, h);
    expect(at(0)).toEqual(start);
    expectAllWithin(at(1), end, { absolute: 4e-16 }, 'end');
    const slopes = [start, end].map((y) => {
      const slope = new Float64Array(4);
      KEPLER(0, Float64Array.from(y), slope);
      return slope;
    });
    // One-sided differences of fourth order; the fifth derivative of the orbit is of the order of 10.
    const d = 2e-3;
    const derivative = (from: number, side: 1 | -1) =>
      start.map((_, i) => {
        const x = [0, 1, 2, 3, 4].map((k) => at(from + side * k * d)[i]!);
        return (side * (-25 * x[0]! + 48 * x[1]! - 36 * x[2]! + 16 * x[3]! - 3 * x[4]!)) / (12 * d * h);
      });
    expectAllWithin(derivative(0, 1), slopes[0]!, { absolute: 1e-10 }, 'slope at the beginning');
    expectAllWithin(derivative(1, -1), slopes[1]!, { absolute: 1e-10 }, 'slope at the end');
  });

  it('is written from the index given and nowhere else, and reads the same there', () => {
    const method = dormandPrince(KEPLER, planet(0), 0, WIDE, [WIDE, WIDE, WIDE, WIDE]);
    method.attempt(0, 0.1);
    method.finish(0, 0.1);
    const count = 4 * INTERPOLANT_TERMS;
    const out = new Float64Array(count + 12).fill(7);
    method.interpolant(0, 0.1, out, 5);
    expect([...out.subarray(0, 5)]).toEqual(new Array(5).fill(7));
    expect([...out.subarray(5 + count)]).toEqual(new Array(7).fill(7));
    const step = new PolynomialStep(0, 0.1, 0, 0.1, 4, out, 5);
    const alone = oneStep(KEPLER, 0, planet(0), 0.1);
    for (const share of [0, 0.37, 1]) {
      const read = new Float64Array(4).fill(9);
      step.read(share * 0.1, 1, 3, read);
      expect([...read.subarray(1, 3)]).toEqual(alone.at(share).slice(1, 3));
      expect([read[0], read[3]]).toEqual([9, 9]);
    }
  });
});

describe('buffers', () => {
  it('belong to one problem: another one in between changes no bit', () => {
    const alone = equalSteps(KEPLER, 0, planet(0), 0.1, 20);
    const tolerance = [WIDE, WIDE, WIDE, WIDE];
    const a = dormandPrince(KEPLER, planet(0), 0, WIDE, tolerance);
    const b = dormandPrince(KEPLER, planet(2), 2, WIDE, tolerance);
    for (let k = 0; k < 20; k++)
      for (const [method, from, h] of [
        [a, 0, 0.1],
        [b, 2, 0.13],
      ] as const) {
        method.attempt(from + k * h, h);
        method.finish(from + k * h, h);
        method.interpolant(from + k * h, h, new Float64Array(4 * INTERPOLANT_TERMS), 0);
        method.advance();
      }
    expect([...a.y]).toEqual(alone);
    expect([...b.y]).toEqual(equalSteps(KEPLER, 2, planet(2), 0.13, 20));
  });

  it('are its own: neither state nor tolerances given are kept or changed, and an attempt leaves the beginning as it was', () => {
    const y0 = planet(0.5);
    const tolerance = [1e-3, 1e-4, 1e-5, 1e-6];
    const method = dormandPrince(KEPLER, y0, 0.5, 0, tolerance);
    const first = method.attempt(0.5, 0.3);
    expect([...method.y]).toEqual(planet(0.5));
    expect(y0).toEqual(planet(0.5));
    expect(tolerance).toEqual([1e-3, 1e-4, 1e-5, 1e-6]);
    tolerance.fill(WIDE);
    y0.fill(0);
    method.attempt(0.5, 0.1);
    expect(method.attempt(0.5, 0.3)).toBe(first);
  });

  it('weighs every component by its own tolerance, by the root of the mean square', () => {
    const two: Derivatives = (t, y, dydt) => {
      KEPLER(t, y, dydt);
      dydt[4] = 0;
      dydt[5] = 0;
      dydt[6] = 0;
      dydt[7] = 0;
    };
    const y8 = [...planet(0), 0, 0, 0, 0];
    const errorOf = (f: Derivatives, y: number[], absolute: number[]) =>
      dormandPrince(f, y, 0, 0, absolute).attempt(0, 0.2);
    const whole = errorOf(KEPLER, planet(0), [1, 1, 1, 1]);
    // Four components more without error: the mean is halved.
    expectWithin(errorOf(two, y8, new Array(8).fill(1)), whole / Math.SQRT2, { relative: 1e-14 }, 'mean');
    expectWithin(errorOf(KEPLER, planet(0), [2, 2, 2, 2]), whole / 2, { relative: 1e-14 }, 'scaled');
    const single = [0, 1, 2, 3].map((i) => {
      const absolute = [1e30, 1e30, 1e30, 1e30];
      absolute[i] = 1;
      return errorOf(KEPLER, planet(0), absolute);
    });
    expect(new Set(single).size).toBe(4);
    // In tolerances a thousand times as wide each error is a thousandth.
    single.forEach((error, i) => {
      const absolute = [1e30, 1e30, 1e30, 1e30];
      absolute[i] = 1000;
      expectWithin(errorOf(KEPLER, planet(0), absolute), error / 1000, { relative: 1e-14 }, `component ${i}`);
    });
  });

  it('says NaN of a step on which a derivative is none, and 0 of a slope that does not change', () => {
    const lost: Derivatives = (t, _y, dydt) => {
      dydt[0] = t > 0.5 ? Number.NaN : 1;
    };
    expect(dormandPrince(lost, [0], 0, 1e-6, [1e-6]).attempt(0, 1)).toBeNaN();
    const still: Derivatives = (_t, _y, dydt) => {
      dydt[0] = 0;
    };
    expect(dormandPrince(still, [3], 0, 1e-6, [1e-6]).attempt(0, 1)).toBe(0);
  });
});
