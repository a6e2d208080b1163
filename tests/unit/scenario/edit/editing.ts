import { expect } from 'vitest';
import { applyEdits } from '../../../../src/scenario/edit/applyEdits.ts';
import type { Edit } from '../../../../src/scenario/edit/edit.ts';
import type { SchemeName } from '../../../../src/scenario/scenario.ts';
import { exampleText } from '../../../support/examples.ts';

/** The examples by their file names. */
export const EXAMPLES = [
  'may-this-belt-be-plugged',
  'what-happens-after-the-stop-button',
  'what-does-a-full-reversal-cost',
  'should-this-fan-be-plugged',
  'how-hard-does-plugging-twist-the-shaft',
  'what-if-only-the-nameplate-is-known',
] as const;
/** Without the one whose circuit is fitted, which takes long. */
export const CIRCUITS = EXAMPLES.filter((name) => name !== 'what-if-only-the-nameplate-is-known');
type Example = (typeof EXAMPLES)[number];

/** The text of an example. */
export function example(name: Example): string {
  return exampleText(name);
}

/** Carries out edits that must succeed. */
export function edited(text: string, ...edits: Edit[]): string {
  const done = applyEdits(text, edits);
  expect(done.refusal).toBeNull();
  return done.text;
}

/** A text with one quantity turned, which must succeed. */
export function adjusted(
  text: string,
  key: Extract<Edit, { kind: 'adjust' }>['key'],
  value: number | null,
): string {
  return edited(text, { kind: 'adjust', key, value });
}

/** Lines that stand in one of two texts only. */
export function changedLines(
  before: string,
  after: string,
): { readonly gone: string[]; readonly come: string[] } {
  const left = before.split('\n');
  const right = after.split('\n');
  const gone = left.filter((line) => !right.includes(line));
  return { gone, come: right.filter((line) => !left.includes(line)) };
}

/** Four written digits: half a unit of the fourth of a number that begins with 1. */
const HAND = 5e-4;

/** Expects a value within what four written digits leave open. */
export function near(value: number | null | undefined, expected: number): void {
  expect(value).toBeTypeOf('number');
  expect(Math.abs(value! / expected - 1)).toBeLessThan(HAND);
}

/** Every scheme of a control circuit. */
export const SCHEMES: readonly SchemeName[] = [
  'throughStop',
  'direct',
  'plugStop',
  'plugStopBoth',
  'antiPlugging',
  'jog',
];
