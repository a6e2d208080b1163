import { describe, expect, it } from 'vitest';
import { quantileRanks } from '../../../../src/survey/spread/quantileRanks.ts';
import { expectWithin } from '../../../support/tolerance.ts';

const TAIL = 0.025;
const median = (n: number) => {
  const { low, high } = quantileRanks(n, 50, TAIL);
  return [low, high];
};

describe('the ranks that bound a median', () => {
  // Source: table A.7, Confidence Intervals for the Population Median, of a textbook of applied statistics,
  // page 656, as printed:
  // for each n the narrowest of its intervals with at least 95 %. At n = 5 the widest has 93.8 %.
  it.each([
    [6, 1, 6],
    [7, 1, 7],
    [8, 1, 8],
    [9, 2, 8],
    [10, 2, 9],
    [11, 2, 10],
    [12, 3, 10],
    [13, 3, 11],
    [14, 3, 12],
    [15, 4, 12],
    [16, 4, 13],
    [17, 5, 13],
    [18, 5, 14],
    [20, 6, 15],
  ])('of %i values are %i and %i, as printed', (n, low, high) => {
    expect(median(n)).toEqual([low, high]);
  });

  it('do not exist for five values or fewer', () => {
    for (let n = 1; n <= 5; n++) expect(median(n)).toEqual([null, null]);
  });
});

describe('the number of runs for a one-sided limit of 95 % confidence', () => {
  // S. S. Wilks, Ann. Math. Statist. 12 (1941) 91; the numbers 59, 93, 124 (95/95) and 299 (99/95) from
  // memory.
  it.each([
    [95, 59, 59],
    [95, 93, 92],
    [95, 124, 122],
    [99, 299, 299],
  ])('of the quantile of %i %% is %i for rank %i', (percent, n, rank) => {
    expect(quantileRanks(n, percent, 0.05).high).toBe(rank);
    expect(quantileRanks(n - 1, percent, 0.05).high).toBe(rank === n ? null : rank);
  });

  it('is the same from below', () => {
    expect(quantileRanks(59, 5, 0.05).low).toBe(1);
    expect(quantileRanks(58, 5, 0.05).low).toBeNull();
    expect(quantileRanks(93, 5, 0.05).low).toBe(2);
  });
});

describe('the ranks of any quantile', () => {
  /** n over k, times p^k·(1 − p)^(n − k) with p in percent, times 100^n: whole numbers without rounding. */
  const exactTerm = (n: number, k: number, percent: number) => {
    let choose = 1n;
    for (let i = 1; i <= k; i++) choose = (choose * BigInt(n - k + i)) / BigInt(i);
    return choose * BigInt(percent) ** BigInt(k) * BigInt(100 - percent) ** BigInt(n - k);
  };

  it('have the exact binomial probabilities on the right side of the tail, and no narrower ones have', () => {
    for (const percent of [1, 5, 25, 50, 75, 90, 95, 99])
      for (const n of [1, 2, 17, 40, 90, 250]) {
        // The tail of 2.5 %, times 100^n.
        const most = 25n * 100n ** BigInt(n);
        let below = 0n;
        let low: number | null = null;
        for (let k = 0; k < n; k++) {
          below += exactTerm(n, k, percent) * 1000n;
          if (below <= most) low = k + 1;
        }
        let above = 0n;
        let high: number | null = null;
        for (let k = n; k > 0; k--) {
          above += exactTerm(n, k, percent) * 1000n;
          if (above <= most) high = k;
        }
        expect(quantileRanks(n, percent, TAIL), `${percent} % of ${n}`).toMatchObject({ low, high });
      }
  });

  it('come near those of the normal distribution for a million values', () => {
    const n = 1_000_000;
    for (const percent of [1, 50, 99]) {
      const share = percent / 100;
      // 97.5 % quantile of the standard normal distribution: 1.959964.
      const half = 1.959964 * Math.sqrt(n * share * (1 - share));
      const { low, high } = quantileRanks(n, percent, TAIL);
      expectWithin(low, n * share - half, { absolute: 2 }, 'low');
      expectWithin(high, n * share + half, { absolute: 3 }, 'high');
    }
  });

  it('put the quantile where at most that share is below it, and halfway where two values do', () => {
    expect(quantileRanks(5, 50, TAIL).estimate).toEqual([3, 3]);
    expect(quantileRanks(6, 50, TAIL).estimate).toEqual([3, 4]);
    expect(quantileRanks(100, 99, TAIL).estimate).toEqual([99, 100]);
    expect(quantileRanks(1, 1, TAIL).estimate).toEqual([1, 1]);
    // 0.07·100 is 7.000000000000001 in floating point.
    expect(quantileRanks(100, 7, TAIL).estimate).toEqual([7, 8]);
  });
});
