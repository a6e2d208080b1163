import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { computeEnvelope, computeExtent, keepExtremes, pick } from '../../../src/report/envelope.ts';

const trace = fc.array(fc.double({ min: -1e4, max: 1e4, noNaN: true }), { minLength: 2, maxLength: 400 });

describe('reducing a trace', () => {
  it('an envelope never loses the highest or lowest value', () => {
    fc.assert(
      fc.property(trace, fc.integer({ min: 1, max: 50 }), (values, columns) => {
        const y = Float64Array.from(values);
        const band = computeEnvelope(
          y.map((_, i) => i),
          y,
          columns,
        );
        expect(computeExtent(band.low, band.high)).toEqual(computeExtent(y));
      }),
    );
  });

  it('neighbouring columns of an envelope touch, so the band has no gaps', () => {
    fc.assert(
      fc.property(trace, fc.integer({ min: 1, max: 50 }), (values, columns) => {
        const y = Float64Array.from(values);
        if (y.length <= columns) return;
        const band = computeEnvelope(
          y.map((_, i) => i),
          y,
          columns,
        );
        for (let c = 1; c < columns; c += 1) {
          expect(band.low[c]!).toBeLessThanOrEqual(band.high[c - 1]!);
          expect(band.high[c]!).toBeGreaterThanOrEqual(band.low[c - 1]!);
        }
      }),
    );
  });

  it('thinning keeps extremes, order and the bound on points', () => {
    fc.assert(
      fc.property(trace, fc.integer({ min: 2, max: 60 }), (values, most) => {
        const y = Float64Array.from(values);
        const kept = keepExtremes(y, most);
        const thinned = pick(y, kept);
        expect(computeExtent(thinned)).toEqual(computeExtent(y));
        expect(thinned.length).toBeLessThanOrEqual(Math.max(2, most));
        if (kept !== null) expect(kept).toEqual(kept.toSorted((a, b) => a - b));
      }),
    );
  });
});
