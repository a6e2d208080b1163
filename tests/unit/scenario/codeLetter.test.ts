import { expect, it } from 'vitest';
import { codeLetterOf, codeLetterRange, kvaPerHorsepower } from '../../../src/scenario/codeLetter.ts';

// NEMA MG 1-10.37.2.
it.each([
  ['A', 0, 3.15],
  ['G', 5.6, 6.3],
  ['H', 6.3, 7.1],
  ['N', 11.2, 12.5],
  ['P', 12.5, 14],
  ['U', 20, 22.4],
  ['V', 22.4, Number.POSITIVE_INFINITY],
])('code letter %s stands for %f up to but not %f kVA/hp', (letter, from, below) => {
  expect(codeLetterRange(letter)).toEqual({ from, below });
  expect(codeLetterOf(from)).toBe(letter);
});

it.each(['I', 'O', 'Q', 'W', ''])('there is no code letter %j', (letter) => {
  expect(codeLetterRange(letter)).toBe(null);
});

// NEMA MG 1-12.35.1, greatest locked-rotor current at 230 V: horsepower, amperes, kVA/hp and letter by hand.
it.each([
  [1, 30, 11.951, 'N'],
  [3, 64, 8.499, 'K'],
  [7.5, 127, 6.746, 'H'],
  [15, 232, 6.161, 'G'],
])('%f hp with %f A at 230 V has %f kVA/hp, letter %s', (horsepower, current, kva, letter) => {
  const found = kvaPerHorsepower(230, current, horsepower * 745.699872);
  expect(found).toBeCloseTo(kva, 3);
  expect(codeLetterOf(found)).toBe(letter);
});
