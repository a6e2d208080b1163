import { expect, it } from 'vitest';
import { closestWord } from '../../../src/scenario/closestWord.ts';

const keys = ['lineVoltage', 'frequency', 'angle', 'inertia', 'torque'];

it.each([
  ['linevoltage', 'lineVoltage'],
  ['voltage', 'lineVoltage'],
  ['frequenzy', 'frequency'],
  ['angel', 'angle'],
  ['torques', 'torque'],
])('%s is close to %s', (written, meant) => {
  expect(closestWord(written, keys)).toBe(meant);
});

it('a word with one slip is nearer than one that is only contained', () => {
  const words = ['stop', 'press stop', 'press emergency stop', 'start reverse'];
  expect(closestWord('press emergencystop', words)).toBe('press emergency stop');
  expect(closestWord('reverse', words)).toBe('start reverse');
  // Four letters in a long word say nothing.
  expect(closestWord('somewhere to stop at last', words)).toBe(undefined);
});

it.each(['', 'x', 'colour', 'a'.repeat(100_000)])('nothing is close to %.10s', (written) => {
  expect(closestWord(written, keys)).toBe(undefined);
});
