import { describe, expect, it } from 'vitest';
import { type ListedSpread, listedCount, listedValue } from '../../../../src/survey/draws/listed.ts';

const all = (spread: ListedSpread) =>
  Array.from({ length: listedCount(spread) }, (_, index) => listedValue(spread, index));

describe('the numbers of a list', () => {
  it('are as written, in their order', () => {
    expect(all({ kind: 'values', values: [20, 18, 0.30000000000000004] })).toEqual([
      20, 18, 0.30000000000000004,
    ]);
  });

  it('of a linear grid have equal steps and are as a person would write them', () => {
    expect(all({ kind: 'grid', from: 0.1, to: 0.5, count: 5, spacing: 'linear' })).toEqual([
      0.1, 0.2, 0.3, 0.4, 0.5,
    ]);
    expect(all({ kind: 'grid', from: -0.3, to: 0.3, count: 7, spacing: 'linear' })).toEqual([
      -0.3, -0.2, -0.1, 0, 0.1, 0.2, 0.3,
    ]);
    expect(all({ kind: 'grid', from: 3, to: 1, count: 3, spacing: 'linear' })).toEqual([3, 2, 1]);
  });

  it('of a logarithmic grid have equal ratios', () => {
    expect(all({ kind: 'grid', from: 0.01, to: 100, count: 5, spacing: 'logarithmic' })).toEqual([
      0.01, 0.1, 1, 10, 100,
    ]);
    const values = all({ kind: 'grid', from: 0.2, to: 2, count: 12, spacing: 'logarithmic' });
    for (let i = 1; i < 12; i++) expect(values[i]! / values[i - 1]!).toBeCloseTo(10 ** (1 / 11), 12);
  });

  it('of a grid end exactly at its ends and never pass them', () => {
    const [from, to] = [0.1234567890123456, 0.1234567890123457];
    for (const spacing of ['linear', 'logarithmic'] as const) {
      const values = all({ kind: 'grid', from, to, count: 5, spacing });
      expect([values[0], values[4]]).toEqual([from, to]);
      for (const value of values) expect(value >= from && value <= to).toBe(true);
    }
    const long = 0.30000000000000004;
    expect(all({ kind: 'grid', from: long, to: -long, count: 3, spacing: 'linear' })).toEqual([
      long,
      0,
      -long,
    ]);
  });
});
