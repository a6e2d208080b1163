import { expect, it } from 'vitest';
import { binaryExponent, scaledByTwo } from '../../../src/numeric/binaryScale.ts';
import { numbersOf } from '../../support/numbersOf.ts';

it('a number lies between the power of two of its exponent and the next one', () => {
  for (const x of [
    ...numbersOf(300, (share) => 10 ** (600 * share - 300)),
    1,
    2,
    5e-324,
    1e-310,
    Number.MAX_VALUE,
  ]) {
    const k = binaryExponent(x);
    expect(scaledByTwo(x, -k)).toBeGreaterThanOrEqual(1);
    expect(scaledByTwo(x, -k)).toBeLessThan(2);
    expect(scaledByTwo(scaledByTwo(x, -k), k)).toBe(x);
  }
});

it('scaling is doubling or halving so many times', () => {
  let [up, down] = [1.1, 1.1];
  for (let k = 1; k <= 1100; k++) {
    up *= 2;
    expect(scaledByTwo(1.1, k)).toBe(up);
    if (k > 1000) continue;
    down /= 2;
    expect(scaledByTwo(1.1, -k)).toBe(down);
  }
  expect(scaledByTwo(1, -1074)).toBe(5e-324);
  expect(scaledByTwo(1, -1076)).toBe(0);
});
