import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { randomStream } from '../../../../src/survey/draws/randomStream.ts';
import { orderStatistics } from '../../../../src/survey/spread/orderStatistics.ts';

/** Values of the ranks, and how often the values were read. */
function selected(values: ArrayLike<number>, ranks: readonly number[]) {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < values.length; i++) {
    low = Math.min(low, values[i]!);
    high = Math.max(high, values[i]!);
  }
  const statistics = orderStatistics(low, high, values.length, ranks);
  let readings = 0;
  for (; !statistics.done(); readings++) {
    for (let i = 0; i < values.length; i++) statistics.take(values[i]!);
    statistics.endReading();
  }
  return { found: ranks.map(statistics.valueAt), readings };
}

const sortedAt = (values: ArrayLike<number>, ranks: readonly number[]) => {
  const sorted = Float64Array.from(values).sort();
  return ranks.map((rank) => sorted[rank - 1]!);
};

const ranksOf = (n: number) =>
  [1, 2, n >> 3, n >> 1, (n >> 1) + 1, n - (n >> 3), n - 1, n].filter((rank) => rank >= 1 && rank <= n);

describe('order statistics from several readings', () => {
  it('are those of sorting, for any values', () => {
    const value = fc.oneof(
      fc.double({ min: -1e300, max: 1e300, noNaN: true }),
      fc.integer({ min: -3, max: 3 }),
      fc.constant(7.5),
    );
    fc.assert(
      fc.property(
        fc.array(value, { minLength: 1, maxLength: 60 }),
        fc.integer({ min: 1, max: 100 }),
        (some, times) => {
          // Repeated and slightly moved, so that bins are crowded and must be divided again.
          const values = Array.from({ length: some.length * times }, (_, i) => {
            const of = some[i % some.length]!;
            return i % 3 === 0 ? of : of * (1 + i * 1e-15);
          });
          const ranks = ranksOf(values.length);
          expect(selected(values, ranks).found.map((x) => x + 0)).toEqual(
            sortedAt(values, ranks).map((x) => x + 0),
          );
        },
      ),
      { seed: 5, numRuns: 150 },
    );
  });

  it('are found where nearly all values lie in a trillionth of the range', () => {
    const next = randomStream(3, 0);
    const values = Float64Array.from({ length: 30_000 }, (_, i) =>
      i < 3 ? 1e6 * (i + 1) : 1 + 1e-6 * next(),
    );
    const ranks = ranksOf(values.length);
    expect(selected(values, ranks).found).toEqual(sortedAt(values, ranks));
  });

  it('take two readings for even values, one for few and none where all are the same', () => {
    const next = randomStream(4, 0);
    const even = Float64Array.from({ length: 100_000 }, next);
    const { found, readings } = selected(even, ranksOf(even.length));
    expect(found).toEqual(sortedAt(even, ranksOf(even.length)));
    expect(readings).toBe(2);
    expect(selected([3, 1, 2], [2])).toEqual({ found: [2], readings: 1 });
    expect(selected(new Float64Array(5000).fill(4), [1, 2500])).toEqual({ found: [4, 4], readings: 0 });
  });

  it('are refused where the next reading has other values, and where a rank was not asked for', () => {
    const few = orderStatistics(1, 3, 3, [2]);
    few.take(1);
    expect(() => few.endReading()).toThrow(
      /rows changed between two readings: 3 values from 1 to 3 before, now 1/u,
    );
    const many = orderStatistics(1, 3, 5000, [2]);
    many.take(1);
    expect(() => many.endReading()).toThrow(/rows changed/u);
    expect(() => orderStatistics(1, 1, 3, [2]).valueAt(3)).toThrow(/rank 3/u);
  });
});
