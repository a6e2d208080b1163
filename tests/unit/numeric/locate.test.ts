import { describe, expect, it } from 'vitest';
import { locate } from '../../../src/numeric/locate.ts';
import { expectWithin } from '../../support/tolerance.ts';

describe('locate', () => {
  it.each([
    ['a line', (t: number) => t - 0.3],
    ['a steep bend', (t: number) => Math.expm1(40 * (t - 0.3))],
    ['a flat cubic', (t: number) => (t - 0.3) ** 3],
    ['a falling curve', (t: number) => Math.cos(t) - Math.cos(0.3)],
  ])('finds the root of %s to the width asked for, with few evaluations', (_name, g) => {
    let evaluations = 0;
    const counted = (t: number) => {
      evaluations++;
      return g(t);
    };
    const t = locate(counted, 0, 1, g(0), g(1), 1e-12);
    expectWithin(t, 0.3, { absolute: 1.1e-12 }, 'root');
    // The search’s own limit; a triple root is the worst case, no event function has one.
    expect(evaluations).toBeLessThan(200);
  });

  it('finds the root of an ordinary curve in about ten evaluations', () => {
    let evaluations = 0;
    const g = (t: number) => {
      evaluations++;
      return Math.sin(t) - 0.4;
    };
    locate(g, 0, 1, -0.4, Math.sin(1) - 0.4, 1e-12);
    expect(evaluations).toBeLessThan(16);
  });

  it('returns the side of the root where the sign has changed', () => {
    const g = (t: number) => t - Math.SQRT1_2;
    expect(g(locate(g, 0, 1, g(0), g(1), 1e-9))).toBeGreaterThanOrEqual(0);
  });
});
