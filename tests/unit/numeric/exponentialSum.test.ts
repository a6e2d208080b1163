import { describe, expect, it } from 'vitest';
import { exponentialSum, zerosOfExponentialSum } from '../../../src/numeric/exponentialSum.ts';
import { expectAllWithin, expectWithin } from '../../support/tolerance.ts';

/** Bisection to the last bit, at values of order one. */
const EXACT = { absolute: 1e-12 };

describe('a sum of exponentials', () => {
  it('has the value of its terms', () => {
    const value = exponentialSum({ factors: [2, -3], rates: [1, 0] }, Math.log(2));
    expectWithin(value, -2, EXACT, 'value');
  });

  it('of two terms has the zero of the closed form', () => {
    // 1·e^(−t) = 4·e^(−3t) at t = ln(4)/2
    const zeros = zerosOfExponentialSum({ factors: [1, -4], rates: [1, 3] }, 0, 10);
    expectAllWithin(zeros, [Math.log(4) / 2], EXACT, 'zeros');
  });

  it('of four terms has all three zeros of the polynomial it is', () => {
    // with x = e^(−t): (x − 0.9)(x − 0.5)(x − 0.1) = x³ − 1.5x² + 0.59x − 0.045
    const sum = { factors: [-0.045, 0.59, -1.5, 1], rates: [0, 1, 2, 3] };
    const zeros = zerosOfExponentialSum(sum, 0, 5);
    expectAllWithin(zeros, [-Math.log(0.9), Math.log(2), Math.log(10)], { absolute: 1e-10 }, 'zeros');
  });

  it('has no zero outside the interval', () => {
    const sum = { factors: [-0.045, 0.59, -1.5, 1], rates: [0, 1, 2, 3] };
    expectAllWithin(zerosOfExponentialSum(sum, 0.2, 1), [Math.log(2)], { absolute: 1e-10 }, 'zeros inside');
    expect(zerosOfExponentialSum({ factors: [1, 4], rates: [1, 3] }, 0, 10)).toEqual([]);
  });

  it('of one term has none', () => {
    expect(zerosOfExponentialSum({ factors: [3], rates: [1] }, 0, 10)).toEqual([]);
  });
});
