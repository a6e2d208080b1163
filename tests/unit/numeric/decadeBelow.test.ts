import { expect, it } from 'vitest';
import { decadeBelow, decimalExponent } from '../../../src/numeric/decadeBelow.ts';

it('a power of ten has itself below it', () => {
  for (let n = -20; n <= 20; n++) {
    expect(decadeBelow(Number(`1e${n}`))).toBe(Number(`1e${n}`));
    expect(decimalExponent(Number(`1e${n}`))).toBe(n);
  }
});

it('what is between two powers of ten has the lower one below it', () => {
  expect(decadeBelow(0.05)).toBe(0.01);
  expect(decadeBelow(9.999999999999998)).toBe(1);
  expect(decadeBelow(1234.5)).toBe(1000);
  expect(decimalExponent(999.9999999999999)).toBe(2);
});
