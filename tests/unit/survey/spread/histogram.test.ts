import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { binEdges, binOf } from '../../../../src/survey/spread/histogram.ts';

const around = (smallest: number, largest: number, count: number, quartiles: [number, number]) =>
  binEdges({ smallest, largest, count, quartiles });

describe('the bins of a histogram', () => {
  it('are as wide as Freedman and Diaconis say, rounded up to 1, 2 or 5', () => {
    // 2·IQR·n^(−1/3) = 2·1·(1/4) = 0.5 for 64 values with long tails.
    const edges = around(-5, 5, 64, [-0.5, 0.5]);
    expect([edges[0], edges[1], edges.at(-1), edges.length]).toEqual([-5, -4.5, 5, 21]);
  });

  it('are at most range/√n wide, so that two humps far apart are seen as two', () => {
    // 1/√100 = 0.1; the first rule would say 2·0.9·100^(−1/3) = 0.39, three bins.
    expect(around(0, 1, 100, [0.05, 0.95])).toEqual([0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1]);
  });

  it('begin with the last round edge that is not above all values', () => {
    // 0.3/0.1 is 2.9999999999999996 in floating point.
    expect(around(0.3, 0.6, 9, [0.3, 0.8]).slice(0, 2)).toEqual([0.3, 0.4]);
  });

  it('are those of Sturges where the quartiles coincide', () => {
    // range/(1 + log2 64) = 7/7 = 1.
    expect(around(0, 7, 64, [3, 3])).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
  });

  it('are one at a single value', () => {
    expect(around(52, 52, 9, [52, 52])).toEqual([52, 53]);
    expect(around(-0.3, -0.3, 9, [-0.3, -0.3])).toEqual([-0.3, -0.29]);
    expect(around(0, 0, 9, [0, 0])).toEqual([0, 1]);
  });

  it('hold every value once, at round edges and at most 60', () => {
    const number = fc.double({ min: -1e150, max: 1e150, noNaN: true });
    fc.assert(
      fc.property(
        number,
        number,
        fc.nat({ max: 1e6 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (a, b, n, t) => {
          const [smallest, largest] = [Math.min(a, b), Math.max(a, b)];
          const inner = smallest + t * (largest - smallest);
          const edges = around(smallest, largest, n + 1, [smallest, Math.min(inner, largest)]);
          expect(edges.length).toBeGreaterThanOrEqual(2);
          expect(edges.length).toBeLessThanOrEqual(61);
          expect(edges[0]).toBeLessThanOrEqual(smallest);
          expect(edges[1]).toBeGreaterThan(smallest);
          expect(edges.at(-1)).toBeGreaterThanOrEqual(largest);
          for (const value of [smallest, inner, largest]) {
            const bin = binOf(edges, value);
            expect(edges[bin]).toBeLessThanOrEqual(value);
            if (bin < edges.length - 2) expect(edges[bin + 1]).toBeGreaterThan(value);
          }
          for (const [i, edge] of edges.entries()) if (i > 0) expect(edge).toBeGreaterThan(edges[i - 1]!);
        },
      ),
      { seed: 11, numRuns: 120 },
    );
  });

  it('have short edges', () => {
    const edges = around(0.0123, 0.0391, 5000, [0.02, 0.03]);
    for (const edge of edges) expect(String(edge).length).toBeLessThanOrEqual(6);
    expect(around(0, 1, 1e9, [0.25, 0.75]).length).toBeLessThanOrEqual(61);
  });
});

describe('a value on an edge', () => {
  it('belongs to the bin above, and the last edge to the last bin', () => {
    expect([0, 0.5, 1, 1.5, 2].map((value) => binOf([0, 1, 2], value))).toEqual([0, 0, 1, 1, 1]);
  });
});
