import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { quantileOf } from '../../../../src/survey/draws/quantileOf.ts';
import { randomStream } from '../../../../src/survey/draws/randomStream.ts';
import type { Spread } from '../../../../src/survey/spec/survey.ts';
import { errorInTolerances } from '../../../support/tolerance.ts';

/** Integral of the normal density, by Simpson's rule: no function of the project. */
function normalBetween(from: number, to: number, steps: number): number {
  const density = (x: number) => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
  let sum = density(from) + density(to);
  for (let i = 1; i < steps; i++) sum += (i % 2 === 1 ? 4 : 2) * density(from + (i * (to - from)) / steps);
  return (sum * (to - from)) / steps / 3;
}

const UNIFORM: Spread = { kind: 'uniform', from: -2, to: 6 };
const LOG_UNIFORM: Spread = { kind: 'logUniform', from: 0.2, to: 20 };
const NORMAL: Spread = { kind: 'normal', mean: 10, deviation: 2, from: 7, to: 16 };
const ABOVE: Spread = { kind: 'normal', mean: 0, deviation: 1, from: 2, to: 4 };
const BELOW: Spread = { kind: 'normal', mean: 0, deviation: 1, from: -4, to: -2 };
const TRIANGULAR: Spread = { kind: 'triangular', from: 1, peak: 2, to: 5 };

/** Each continuous spread with its distribution function, from textbooks, and steps of its integral. */
const DISTRIBUTIONS: readonly [string, Spread, (x: number, steps: number) => number][] = [
  ['uniform', UNIFORM, (x) => (x + 2) / 8],
  ['log-uniform', LOG_UNIFORM, (x) => Math.log(x / 0.2) / Math.log(100)],
  ['cut normal', NORMAL, (x, n) => normalBetween(-1.5, (x - 10) / 2, n) / normalBetween(-1.5, 3, n)],
  ['upper tail of a normal', ABOVE, (x, n) => normalBetween(2, x, n) / normalBetween(2, 4, n)],
  ['lower tail of a normal', BELOW, (x, n) => normalBetween(-4, x, n) / normalBetween(-4, -2, n)],
  ['triangular', TRIANGULAR, (x) => (x < 2 ? (x - 1) ** 2 / 4 : 1 - (5 - x) ** 2 / 12)],
];

const anySpread: fc.Arbitrary<Spread> = fc
  .tuple(
    fc.double({ min: 1e-3, max: 1e3, noNaN: true }),
    fc.double({ min: 1e-6, max: 1e3, noNaN: true }),
    fc.double({ min: 0, max: 1, noNaN: true }),
  )
  .chain(([from, width, share]) => {
    const to = from + width;
    const inside = Math.min(from + share * width, to);
    return fc.constantFrom<Spread>(
      { kind: 'uniform', from, to },
      { kind: 'logUniform', from, to },
      { kind: 'normal', mean: inside, deviation: width / 3, from, to },
      { kind: 'triangular', from, peak: inside, to },
      { kind: 'grid', from, to, count: 7, spacing: 'linear' },
      { kind: 'grid', from, to, count: 7, spacing: 'logarithmic' },
      { kind: 'values', values: [from, inside, to] },
    );
  });
const anyProbability = fc.double({ min: 0, max: 1, minExcluded: true, maxExcluded: true, noNaN: true });

describe('the quantile of a spread', () => {
  it.each(DISTRIBUTIONS)(
    '%s: its distribution function leads back to the probability',
    (_name, spread, distribution) => {
      for (const u of [1e-6, 0.01, 0.1, 0.25, 0.5, 0.75, 0.9, 0.99, 1 - 1e-6])
        expect(
          errorInTolerances(distribution(quantileOf(spread, u), 2000), u, { absolute: 1e-11 }),
          String(u),
        ).toBeLessThan(1);
    },
  );

  it.each(DISTRIBUTIONS)('%s: 2000 draws are distributed so', (_name, spread, distribution) => {
    const next = randomStream(11, 0);
    const sorted = Array.from({ length: 2000 }, () => quantileOf(spread, next())).sort((a, b) => a - b);
    const greatest = sorted.reduce((most, x, i) => {
      const p = distribution(x, 20);
      return Math.max(most, p - i / 2000, (i + 1) / 2000 - p);
    }, 0);
    // Kolmogorov and Smirnov, 1 % point 1.63/√n.
    expect(greatest * Math.sqrt(2000)).toBeLessThan(1.63);
  });

  it('of a normal distribution cut far out is nearly the normal one', () => {
    const spread: Spread = { kind: 'normal', mean: 5, deviation: 0.1, from: 4, to: 6 };
    // Percentage points in any table of statistics: 1.2816, 1.9600, to the digits that stand here.
    for (const [u, deviations] of [
      [0.9, 1.2815515655446004],
      [0.1, -1.2815515655446004],
      [0.975, 1.959963984540054],
    ] as const)
      expect(
        errorInTolerances(quantileOf(spread, u), 5 + 0.1 * deviations, { relative: 1e-15 }),
      ).toBeLessThanOrEqual(1);
  });

  it('keeps its digits where only a far tail of a normal distribution is left', () => {
    // Median by mpmath 1.3.0 with 40 digits.
    const tail: Spread = { kind: 'normal', mean: 0, deviation: 1, from: 30, to: 35 };
    const mirrored: Spread = { kind: 'normal', mean: 0, deviation: 1, from: -35, to: -30 };
    const median = quantileOf(tail, 0.5);
    expect(errorInTolerances(median, 30.02307046782731, { relative: 1e-15 })).toBeLessThanOrEqual(1);
    expect(quantileOf(mirrored, 0.5)).toBe(-median);
    expect(() => quantileOf({ kind: 'normal', mean: 0, deviation: 1, from: 50, to: 60 }, 0.5)).toThrow(
      /nothing is left to draw from/u,
    );
  });

  it('lies within the bounds and rises with the probability', () => {
    fc.assert(
      fc.property(anySpread, anyProbability, anyProbability, (spread, u, v) => {
        const [low, high] = [quantileOf(spread, Math.min(u, v)), quantileOf(spread, Math.max(u, v))];
        const [least, most] =
          spread.kind === 'values'
            ? [Math.min(...spread.values), Math.max(...spread.values)]
            : [spread.from, spread.to];
        for (const value of [low, high]) expect(value >= least && value <= most).toBe(true);
        // Rounding may turn neighbours round by a few units in the last place of the larger bound.
        expect(high - low).toBeGreaterThan(-2e-14 * most);
      }),
      { seed: 1, numRuns: 500 },
    );
  });

  it('of a list gives each number the same share', () => {
    const spread: Spread = { kind: 'values', values: [18, 24, 20] };
    const drawn = Array.from({ length: 300 }, (_, i) => quantileOf(spread, (i + 0.5) / 300));
    for (const value of spread.values) expect(drawn.filter((one) => one === value)).toHaveLength(100);
    expect(quantileOf(spread, 1 - 2 ** -53)).toBe(20);
  });

  it('of a grid gives each number the same share', () => {
    const spread: Spread = { kind: 'grid', from: 1, to: 1000, count: 4, spacing: 'logarithmic' };
    const drawn = Array.from({ length: 400 }, (_, i) => quantileOf(spread, (i + 0.5) / 400));
    for (const value of [1, 10, 100, 1000]) expect(drawn.filter((one) => one === value)).toHaveLength(100);
  });

  it('refuses probabilities at which a value may be infinite', () => {
    for (const u of [0, 1, -0.1, Number.NaN])
      expect(() => quantileOf(UNIFORM, u)).toThrow(/between 0 and 1 would be right/u);
  });
});
