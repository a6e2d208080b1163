import { expect, it } from 'vitest';
import { raised } from '../../../src/numeric/raised.ts';
import { withOwnPowers } from '../../../src/simulate/withOwnPowers.ts';

const { pow, log10 } = Math;

it('own powers stand in the place of the engine’s while the work lasts, and not after it', () => {
  expect(withOwnPowers(() => Math.pow)).toBe(raised);
  expect([Math.pow, Math.log10]).toEqual([pow, log10]);
});

it('the engine’s powers come back when the work fails', () => {
  expect(() =>
    withOwnPowers(() => {
      throw new RangeError('x');
    }),
  ).toThrow(RangeError);
  expect([Math.pow, Math.log10]).toEqual([pow, log10]);
});

it('work within work keeps its own powers until the outer one ends', () => {
  withOwnPowers(() => {
    withOwnPowers(() => {});
    expect(Math.pow).toBe(raised);
  });
  expect(Math.pow).toBe(pow);
});
