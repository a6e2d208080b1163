import { describe, expect, it } from 'vitest';
import { raised, squared } from '../../../src/numeric/raised.ts';
import { exponentialOf, logarithmOf, toFixed, ulpsFrom } from '../../support/fixedPoint.ts';
import { numbersOf } from '../../support/numbersOf.ts';

const SPECIAL = [
  0,
  -0,
  1,
  -1,
  0.3,
  -0.3,
  2.5,
  -2.5,
  Number.NaN,
  Number.POSITIVE_INFINITY,
  Number.NEGATIVE_INFINITY,
];

describe('a power', () => {
  it('of 2 is the number times itself', () => {
    for (const x of numbersOf(200, (share) => 1e3 * (share - 0.5))) {
      expect(raised(x, 2)).toBe(x * x);
      expect(squared(x)).toBe(x * x);
    }
  });

  it('of a whole exponent is multiplied out: exact as long as the product is', () => {
    for (let n = 0; n <= 33; n++) expect(raised(3, n)).toBe(Number(3n ** BigInt(n)));
    for (let n = -1022; n <= 1023; n += 5) expect(raised(2, n)).toBe(2 ** n);
    expect(raised(10, -3)).toBe(1e-3);
    expect(raised(-5, 3)).toBe(-125);
  });

  it('of a broken exponent is right to 1 + 2·|exponent · ln x| units in the last place', () => {
    for (const x of numbersOf(40, (share) => 10 ** (4 * share - 2)))
      for (const exponent of [1 / 3, -0.7, 0.95, 2.4]) {
        const product = (toFixed(exponent) * logarithmOf(toFixed(x))) / toFixed(1);
        const bound = 1 + 2 * Math.abs(exponent * Math.log(x));
        expect(
          Math.abs(ulpsFrom(exponentialOf(product), raised(x, exponent))),
          `${x} ${exponent}`,
        ).toBeLessThan(bound);
      }
  });

  it('of a half is the root', () => {
    for (const x of numbersOf(100, (share) => 1e4 * share)) expect(raised(x, 0.5)).toBe(Math.sqrt(x));
  });

  it.each(SPECIAL)('of %s has the limits and signs of the engine', (x) => {
    for (const exponent of [...SPECIAL, 2, 3, -3, 1e9, -1e9, 1e9 + 1, 1e300, 0.5])
      if (Number.isFinite(x ** exponent) && x ** exponent !== 0 && Math.abs(exponent) < 10)
        expect(raised(x, exponent) / x ** exponent, `${x} to ${exponent}`).toBeCloseTo(1, 14);
      else expect(raised(x, exponent), `${x} to ${exponent}`).toBe(x ** exponent);
  });

  it('whose inverse is no number any more may still be one', () => {
    expect(raised(1e160, -2)).toBe(10 ** -320);
  });
});
