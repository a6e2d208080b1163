import { describe, expect, it } from 'vitest';
import { exponential } from '../../../src/numeric/exponential.ts';
import { decimalLogarithm, logarithm } from '../../../src/numeric/logarithm.ts';
import { logarithmOf, toFixed, ulpsFrom } from '../../support/fixedPoint.ts';
import { numbersOf } from '../../support/numbersOf.ts';

describe('the logarithm', () => {
  it.each([
    ['beside 1', (share: number) => 0.5 + share],
    ['very near to 1', (share: number) => 1 + (share - 0.5) * 1e-9],
    ['of sizes of a machine', (share: number) => 10 ** (12 * share - 6)],
    ['of the largest and smallest normal numbers', (share: number) => 10 ** (600 * share - 300)],
  ])('is right to a unit in the last place %s', (_name, map) => {
    for (const x of numbersOf(40, map))
      expect(Math.abs(ulpsFrom(logarithmOf(toFixed(x)), logarithm(x))), String(x)).toBeLessThan(1);
  });

  it('undoes the exponential', () => {
    // A unit of e^x is 2.2e-16 of it, which the logarithm turns into an absolute error.
    for (const x of numbersOf(500, (share) => 600 * share - 300))
      expect(Math.abs(logarithm(exponential(x)) - x)).toBeLessThan(3e-16 + 2.3e-16 * Math.abs(x));
  });

  it('has the limits of the engine, also below the normal numbers', () => {
    for (const x of [Number.NaN, -1, -0, 0, 1, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, -5e-324])
      expect(logarithm(x)).toBe(Math.log(x));
    for (const x of [5e-324, 1e-310]) expect(logarithm(x)).toBeCloseTo(Math.log(x), 12);
  });

  it('to base 10 of a power of ten is its exponent, to two units', () => {
    for (let n = -20; n <= 20; n++)
      expect(Math.abs(decimalLogarithm(Number(`1e${n}`)) - n)).toBeLessThanOrEqual(4.5e-16 * Math.abs(n));
  });
});
