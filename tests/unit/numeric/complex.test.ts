import { describe, expect, it } from 'vitest';
import { add, divide, magnitude, multiply, subtract, turn } from '../../../src/numeric/complex.ts';
import { expectAllWithin } from '../../support/tolerance.ts';

describe('complex arithmetic', () => {
  it('adds, subtracts, multiplies and divides', () => {
    expect(add([1, 2], [3, -5])).toEqual([4, -3]);
    expect(subtract([1, 2], [3, -5])).toEqual([-2, 7]);
    expect(multiply([1, 2], [3, -5])).toEqual([13, 1]);
    expectAllWithin(divide([13, 1], [3, -5]), [1, 2], { relative: 1e-15 }, 'quotient');
    expect(magnitude([3, -4])).toBe(5);
  });

  it('turns counter-clockwise by a positive angle', () => {
    expectAllWithin(turn([2, 0], Math.PI / 2), [0, 2], { absolute: 1e-15 }, 'turned');
  });
});
