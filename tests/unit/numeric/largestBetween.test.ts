import { describe, expect, it } from 'vitest';
import { largestBetween } from '../../../src/numeric/largestBetween.ts';
import { expectWithin } from '../../support/tolerance.ts';

describe('largestBetween', () => {
  it('finds a smooth crest with its value, in few evaluations', () => {
    let evaluations = 0;
    const found = largestBetween(
      (x) => {
        evaluations++;
        return 3 * Math.cos(x - 0.7);
      },
      0,
      2,
      1e-8,
    );
    // A crest is flat: its place is known to the width, its value to rounding.
    expectWithin(found.x, 0.7, { absolute: 1e-7 }, 'place');
    expectWithin(found.value, 3, { relative: 1e-14 }, 'value');
    expect(evaluations).toBeLessThan(30);
  });

  it.each([
    ['rising', (x: number) => x, 2],
    ['falling', (x: number) => -x, 0],
  ])('finds the end of a %s function', (_name, f, end) => {
    expect(largestBetween(f, 0, 2, 1e-8)).toEqual({ x: end, value: f(end) });
  });

  it('finds a sharp corner', () => {
    const found = largestBetween((x) => -Math.abs(x - 0.31), 0, 1, 1e-10);
    expectWithin(found.x, 0.31, { absolute: 1e-9 }, 'place');
  });

  it('ends on a constant function', () => {
    expect(largestBetween(() => 4, 0, 1, 1e-12).value).toBe(4);
  });
});
