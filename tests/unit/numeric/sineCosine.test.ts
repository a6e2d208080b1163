import { describe, expect, it } from 'vitest';
import { cosine, sine, sineAndCosine } from '../../../src/numeric/sineCosine.ts';
import { cosineOf, sineOf, toFixed, ulpsFrom } from '../../support/fixedPoint.ts';
import { numbersOf } from '../../support/numbersOf.ts';

describe.each([
  ['within a turn', 4, 300],
  ['of a start', 1e3, 200],
  ['of an hour at 60 Hz', 1.6e6, 200],
])('angles %s', (_name, largest, count) => {
  const angles = numbersOf(count, (share) => largest * (2 * share - 1));

  it('have sine and cosine to a unit in the last place', () => {
    for (const x of angles) {
      expect(Math.abs(ulpsFrom(sineOf(toFixed(x)), sine(x))), `sine of ${x}`).toBeLessThan(1);
      expect(Math.abs(ulpsFrom(cosineOf(toFixed(x)), cosine(x))), `cosine of ${x}`).toBeLessThan(1);
    }
  });
});

describe('sine and cosine', () => {
  it('lose nothing beside their zeros, where nearly all of the angle is taken off', () => {
    for (const quarters of [1, 2, 3, 4, 710, 1_000_003, 1_048_575]) {
      const x = quarters * (Math.PI / 2);
      expect(Math.abs(ulpsFrom(sineOf(toFixed(x)), sine(x)))).toBeLessThan(1);
      expect(Math.abs(ulpsFrom(cosineOf(toFixed(x)), cosine(x)))).toBeLessThan(1);
    }
  });

  it('are known to 1e-15 up to angles whose own last place is tenths', () => {
    for (const x of numbersOf(200, (share) => 10 ** (6.2 + 8.8 * share))) {
      const errors = [sineOf(toFixed(x)) - toFixed(sine(x)), cosineOf(toFixed(x)) - toFixed(cosine(x))];
      for (const error of errors)
        expect(Math.abs(Number((error * 10n ** 18n) / toFixed(1)))).toBeLessThan(1000);
    }
  });

  it('are odd and even, and their squares sum to 1', () => {
    for (const x of numbersOf(1000, (share) => 1e4 * (share - 0.5))) {
      expect(sine(-x)).toBe(-sine(x));
      expect(cosine(-x)).toBe(cosine(x));
      // Two errors of a unit each, of squares whose sum is 1.
      expect(Math.abs(sine(x) * sine(x) + cosine(x) * cosine(x) - 1)).toBeLessThan(4.5e-16);
    }
  });

  it('keep the sign of zero, and are no number of what is none or has no end', () => {
    expect(sine(0)).toBe(0);
    expect(sine(-0)).toBe(-0);
    expect(cosine(-0)).toBe(1);
    for (const f of [sine, cosine])
      for (const x of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])
        expect(f(x)).toBeNaN();
    for (const f of [sine, cosine])
      for (const x of [1e18, 1e300, -Number.MAX_VALUE]) expect(Math.abs(f(x))).toBeLessThanOrEqual(1);
  });
});

describe('sine and cosine at once', () => {
  const out = [Number.NaN, Number.NaN];

  it.each([
    ['beside zero', (share: number) => 10 ** (-20 + 19 * share)],
    ['up to an eighth of a turn', (share: number) => (Math.PI / 4) * share],
    ['within a turn', (share: number) => 7 * share],
    ['of a start', (share: number) => 1e3 * share],
    ['of an hour at 60 Hz', (share: number) => 1.7e6 * share],
    ['whose own last place is tenths', (share: number) => 10 ** (6.2 + 9 * share)],
    ['of any size', (share: number) => 10 ** (15 + 290 * share)],
  ])('are those of each alone to the last bit: angles %s', (_name, angle) => {
    for (const size of numbersOf(500, angle))
      for (const x of [size, -size]) {
        sineAndCosine(x, out);
        expect(Object.is(out[0], sine(x)), `sine of ${x}`).toBe(true);
        expect(Object.is(out[1], cosine(x)), `cosine of ${x}`).toBe(true);
      }
  });

  it('are so at the borders of the pieces and their neighbours, at zeros, and of what is no number', () => {
    const eighth = Math.PI / 4;
    const exact = (1_048_576 * Math.PI) / 2;
    const quarters = [1, 2, 3, 4, 5, 710, 1_000_003, 1_048_575, 1_048_577].map((k) => k * (Math.PI / 2));
    const borders = [1e-8, eighth, 2 * eighth, 3 * eighth, 5 * eighth, exact, ...quarters];
    const besides = borders.flatMap((x) => [x * (1 - Number.EPSILON / 2), x, x * (1 + Number.EPSILON)]);
    const rest = [0, Number.MIN_VALUE, Number.MAX_VALUE, Number.POSITIVE_INFINITY, Number.NaN];
    for (const size of [...besides, ...rest])
      for (const x of [size, -size]) {
        sineAndCosine(x, out);
        expect(Object.is(out[0], sine(x)), `sine of ${x}`).toBe(true);
        expect(Object.is(out[1], cosine(x)), `cosine of ${x}`).toBe(true);
      }
  });
});
