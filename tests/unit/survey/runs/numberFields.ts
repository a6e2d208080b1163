import { splitQuantity } from '../../../../src/scenario/parseQuantity.ts';
import type { Survey, VariedField } from '../../../../src/survey/spec/survey.ts';

/** A number that stands in a scenario, as a field. */
export interface NumberField {
  readonly field: VariedField;
  /** As it stands, in the field's unit. */
  readonly number: number;
}

/** Keys of texts that begin with a digit and are no numbers. */
const NO_NUMBERS = ['date', 'contactsChanged', 'insulationClass'];

/** Every number of a scenario's plain data, as a field. */
export function numbersIn(node: unknown, path: string[] = []): NumberField[] {
  const found = (number: number, unit: string): NumberField[] => [
    { field: { path: path.join('.'), unit, spread: { kind: 'values', values: [number] } }, number },
  ];
  if (typeof node === 'number') return found(node, '');
  if (typeof node === 'string' && !NO_NUMBERS.includes(path.at(-1)!)) {
    const split = splitQuantity(node, '', '');
    return 'code' in split || split.unitText === '' ? [] : found(split.number, split.unitText);
  }
  if (typeof node !== 'object' || node === null) return [];
  return Object.entries(node).flatMap(([key, value]) => numbersIn(value, [...path, key]));
}

/** A survey of a scenario's text that asks for nothing in particular. */
export function surveyOf(
  text: string,
  fields: readonly VariedField[],
  changes: Partial<Pick<Survey, 'metrics' | 'verdict'>> = {},
): Survey {
  const base = { fileName: 'base.yaml', text };
  const task = { kind: 'sweep' } as const;
  return {
    title: '',
    description: '',
    base,
    fields,
    metrics: ['startTime'],
    verdict: false,
    seed: 1,
    task,
    ...changes,
  };
}

/** A field that takes any value from one number to another. */
export function between(path: string, unit: string, from: number, to: number): VariedField {
  return { path, unit, spread: { kind: 'uniform', from, to } };
}
