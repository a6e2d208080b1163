import { describe, expect, it } from 'vitest';
import { firstFrom, neverFalls, valueAt } from '../../../../src/report/canvas/samples.ts';
import { traceCurve } from '../../../../src/report/canvas/traceCurve.ts';

const MAP = { x: { offset: 0, factor: 800 }, y: { offset: 0, factor: 1 } };
const WINDOW = { left: 0, right: 800 };

/** Corners of a traced curve, one list for each piece of it. */
function traced(xs: Float64Array, ys: Float64Array, map: typeof MAP = MAP): (readonly [number, number])[][] {
  const pieces: [number, number][][] = [];
  const sink = {
    moveTo: (x: number, y: number) => void pieces.push([[x, y]]),
    lineTo: (x: number, y: number) => void pieces.at(-1)!.push([x, y]),
  };
  traceCurve(sink, xs, ys, map, WINDOW);
  return pieces;
}

const even = (n: number) => Float64Array.from({ length: n }, (_, i) => i / (n - 1));

describe('tracing a curve', () => {
  it('keeps every sample where there are fewer than two to a pixel', () => {
    const xs = even(1001);
    expect(traced(xs, xs.map(Math.sin))[0]).toHaveLength(1001);
  });

  it('keeps a crest of one sample among thirty to a pixel, at its own place', () => {
    const xs = even(24_001);
    const ys = xs.map((_, i) => (i === 12_345 ? 7 : i === 20_001 ? -5 : 0));
    const corners = traced(xs, ys).flat();
    expect(corners.filter(([, y]) => y === 7)).toEqual([[xs[12_345]! * 800, 7]]);
    expect(corners.filter(([, y]) => y === -5)).toEqual([[xs[20_001]! * 800, -5]]);
  });

  it('draws at most four corners for each pixel of a dense curve, from left to right', () => {
    const xs = even(100_001);
    const corners = traced(
      xs,
      xs.map((x) => Math.sin(5000 * x)),
    ).flat();
    expect(corners.length).toBeLessThanOrEqual(4 * 801);
    expect(neverFalls(corners.map(([x]) => x))).toBe(true);
  });

  it('has in each pixel column the extremes that all samples there have', () => {
    const xs = even(16_000);
    const ys = xs.map((x) => Math.sin(900 * x) + 0.3 * Math.sin(7001 * x));
    const corners = traced(xs, ys).flat();
    for (const column of [0, 17, 399, 799]) {
      const own = [...ys].filter((_, i) => Math.floor(xs[i]! * 800) === column);
      const drawn = corners.filter(([x]) => Math.floor(x) === column).map(([, y]) => y);
      expect([Math.min(...drawn), Math.max(...drawn)]).toEqual([Math.min(...own), Math.max(...own)]);
    }
  });

  it('leaves out what is not visible but for one sample beyond each edge', () => {
    const xs = even(1001);
    // Ten times enlarged: 0.5 to 0.6 fills the window.
    const map = { ...MAP, x: { offset: -4000, factor: 8000 } };
    const corners = traced(xs, xs, map).flat();
    expect(corners.length).toBeLessThanOrEqual(104);
    expect(corners[0]![0]).toBeLessThanOrEqual(0);
    expect(corners.at(-1)![0]).toBeGreaterThanOrEqual(800);
  });

  it.each([200, 40_000])('is interrupted by a value that is not finite (%i samples)', (n) => {
    const xs = even(n);
    const ys = xs.map((x) => (x > 0.4 && x < 0.5 ? Number.NaN : 1));
    const pieces = traced(xs, ys);
    expect(pieces).toHaveLength(2);
    expect(pieces.flat().every(([, y]) => Number.isFinite(y))).toBe(true);
  });

  it('follows a curve that turns back through all its turns', () => {
    const turn = Float64Array.from({ length: 4001 }, (_, i) => (i * 2 * Math.PI) / 1000);
    const corners = traced(turn.map(Math.cos), turn.map(Math.sin), { ...MAP, y: MAP.x }).flat();
    const leftmost = corners.filter(([x]) => x < -799.99).length;
    expect(leftmost).toBe(4);
  });
});

describe('samples', () => {
  it('finds the first sample that is not below a value', () => {
    expect([-1, 0, 0.5, 2, 3].map((x) => firstFrom([0, 1, 2], x))).toEqual([0, 0, 1, 2, 3]);
  });

  it('reads straight between samples and nothing outside them', () => {
    expect(valueAt([0, 2, 3], [10, 20, 0], 1)).toBe(15);
    expect(valueAt([0, 2, 3], [10, 20, 0], 3)).toBe(0);
    expect(valueAt([0, 2, 3], [10, 20, 0], 3.1)).toBeNaN();
    expect(valueAt([], [], 0)).toBeNaN();
  });
});
