import { describe, expect, it } from 'vitest';
import { GAUSS_POINTS } from '../../../src/numeric/gaussPoints.ts';
import { expectWithin } from '../../support/tolerance.ts';

describe('the Gauss points', () => {
  it('integrate every power up to 9 exactly, and not 10', () => {
    const integralOf = (power: number) => GAUSS_POINTS.reduce((total, { x, w }) => total + w * x ** power, 0);
    for (let power = 0; power <= 9; power++)
      expectWithin(integralOf(power), 1 / (power + 1), { relative: 1e-14 }, `x^${power}`);
    expect(Math.abs(integralOf(10) * 11 - 1)).toBeGreaterThan(1e-6);
  });

  it('stand in ascending order within the interval', () => {
    const places = GAUSS_POINTS.map(({ x }) => x);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(places[0]).toBeGreaterThan(0);
    expect(places.at(-1)).toBeLessThan(1);
  });
});
