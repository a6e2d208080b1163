import { describe, expect, it } from 'vitest';
import { exponential, exponentialLessOne } from '../../../src/numeric/exponential.ts';
import { exponentialOf, toFixed, ulpsFrom } from '../../support/fixedPoint.ts';
import { numbersOf } from '../../support/numbersOf.ts';

describe('the exponential', () => {
  it.each([
    ['beside 0', 1, 1],
    ['of all normal results', 708, 708],
  ])(
    'is right to 0.8 units in the last place, which needs what the reduction loses, %s',
    (_name, below, above) => {
      for (const x of numbersOf(1000, (share) => (below + above) * share - below))
        expect(Math.abs(ulpsFrom(exponentialOf(toFixed(x)), exponential(x))), String(x)).toBeLessThan(0.8);
    },
  );

  it('goes down through the numbers below the normal ones to 0', () => {
    for (const x of numbersOf(100, (share) => -708 - 37 * share))
      expect(Math.abs(exponential(x) - Math.exp(x))).toBeLessThanOrEqual(
        2 * Number.MIN_VALUE + 1e-15 * Math.exp(x),
      );
    expect(exponential(-745.14)).toBe(0);
  });

  it('less 1 is right to two units, and to the sign of zero', () => {
    const one = toFixed(1);
    for (const x of numbersOf(300, (share) => 40 * share - 36))
      expect(
        Math.abs(ulpsFrom(exponentialOf(toFixed(x)) - one, exponentialLessOne(x))),
        String(x),
      ).toBeLessThan(2);
    for (const x of numbersOf(300, (share) => 10 ** (-17 * share)))
      for (const y of [x, -x])
        expect(
          Math.abs(ulpsFrom(exponentialOf(toFixed(y)) - one, exponentialLessOne(y))),
          String(y),
        ).toBeLessThan(2);
    expect(exponentialLessOne(-0)).toBe(-0);
    expect(exponentialLessOne(-100)).toBe(-1);
  });

  it('of a sum is the product', () => {
    // Three errors of a unit, 2.2e-16, and the rounding of product and quotient.
    for (const x of numbersOf(500, (share) => 20 * share - 10))
      expect(Math.abs((exponential(x) * exponential(x)) / exponential(2 * x) - 1)).toBeLessThan(9e-16);
  });

  it.each([exponential, exponentialLessOne])('has the limits of the engine: %s', (f) => {
    const engine = f === exponential ? Math.exp : Math.expm1;
    for (const x of [
      Number.NaN,
      0,
      Number.POSITIVE_INFINITY,
      Number.NEGATIVE_INFINITY,
      709.79,
      -746,
      1e300,
      -1e300,
    ])
      expect(f(x)).toBe(engine(x));
    expect(f(709.78)).toBeLessThan(Number.POSITIVE_INFINITY);
  });
});
