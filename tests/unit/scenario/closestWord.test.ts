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

it.each(['', 'x', 'colour', 'a'.repeat(100_000)])('nothing is close to %.10s', (written) => {
  expect(closestWord(written, keys)).toBe(undefined);
});
