import { describe, expect, it } from 'vitest';
import { euclideanNorm, hypotenuse } from '../../../src/numeric/hypotenuse.ts';
import { rootOf, toFixed, ulpsFrom } from '../../support/fixedPoint.ts';
import { numbersOf } from '../../support/numbersOf.ts';

const shares = numbersOf(300, (share) => share);
const SPECIAL = [0, -0, 3, -4, Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];

describe('the hypotenuse', () => {
  it('is right to a unit in the last place', () => {
    for (const [i, a] of shares.entries()) {
      const x = 1e3 * a;
      const y = (shares[(i * 7) % 300]! - 0.5) * 1e4;
      const square = toFixed(x) * toFixed(x) + toFixed(y) * toFixed(y);
      expect(Math.abs(ulpsFrom(rootOf(square / toFixed(1)), hypotenuse(x, y)))).toBeLessThan(1);
      expect(euclideanNorm([x, y])).toBe(hypotenuse(x, y));
    }
  });

  it('of 3 and 4 is 5 in every size', () => {
    for (const size of [1e-320, 1e-200, 1, 1e200, 3e307]) {
      expect(hypotenuse(3 * size, -4 * size) / (5 * size)).toBeCloseTo(1, size < 1e-300 ? 3 : 15);
      expect(euclideanNorm([3 * size, -4 * size]) / (5 * size)).toBeCloseTo(1, size < 1e-300 ? 3 : 15);
    }
  });

  it('has the limits of the engine', () => {
    for (const x of SPECIAL)
      for (const y of SPECIAL) {
        // Of two lengths either may be a unit off.
        if (Number.isFinite(x * y) && x * y !== 0) continue;
        expect(hypotenuse(x, y), `${x} and ${y}`).toBe(Math.hypot(x, y));
      }
    expect(euclideanNorm([]), 'of nothing').toBe(0);
  });
});
