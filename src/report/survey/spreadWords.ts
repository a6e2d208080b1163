import type { Spread, SurveyTask, VariedField } from '../../survey/spec/survey.ts';
import type { UnitSystem } from '../formatQuantity.ts';
import { fieldUnit, statedNumber, withUnit } from './fieldUnit.ts';
import { fieldName } from './fieldWords.ts';

/** A longer list is told by its ends. */
const LISTED = 8;

/** What a field does in a survey as one sentence: "Supply angle at t = 0, evenly spread over 0 … 360°." */
export function fieldSentence(
  { path, unit, spread }: VariedField,
  task: SurveyTask,
  units: UnitSystem,
): string {
  const { label, perWritten } = fieldUnit(unit, units);
  const show = (value: number) => statedNumber(value * perWritten);
  return `${fieldName(path)}, ${spreadWords(spread, task, show, label)}.`;
}

function spreadWords(
  spread: Spread,
  task: SurveyTask,
  show: (value: number) => string,
  label: string,
): string {
  const range = (from: number, to: number) => withUnit(`${show(from)} … ${show(to)}`, label);
  switch (spread.kind) {
    case 'values':
      return `${listWords(spread.values, show, label)}${isDrawn(task) ? ', each as likely as the others' : ''}`;
    case 'grid':
      return `${spread.count} values over ${range(spread.from, spread.to)}, ${
        spread.spacing === 'linear' ? 'equal steps' : 'equal ratios'
      } apart`;
    case 'uniform':
      return task.kind === 'worst'
        ? `searched over ${range(spread.from, spread.to)}`
        : `evenly spread over ${range(spread.from, spread.to)}`;
    case 'logUniform':
      return task.kind === 'worst'
        ? `searched over ${range(spread.from, spread.to)} in ratios`
        : `spread over ${range(spread.from, spread.to)}, equal ratios being equally likely`;
    case 'normal':
      return `normally distributed around ${withUnit(show(spread.mean), label)} with a standard deviation of ${withUnit(
        show(spread.deviation),
        label,
      )}, cut off outside ${range(spread.from, spread.to)}`;
    case 'triangular':
      return `triangularly distributed over ${range(spread.from, spread.to)}, most likely ${withUnit(
        show(spread.peak),
        label,
      )}`;
  }
}

function listWords(values: readonly number[], show: (value: number) => string, label: string): string {
  if (values.length === 1) return `${withUnit(show(values[0]!), label)} in every run`;
  if (values.length <= LISTED) return `one of ${withUnit(values.map(show).join(', '), label)}`;
  const [first, last] = [Math.min(...values), Math.max(...values)];
  return `one of ${values.length} values in ${withUnit(`${show(first)} … ${show(last)}`, label)}`;
}

/** Whether the runs are draws from distributions. */
export function isDrawn({ kind }: SurveyTask): boolean {
  return kind === 'random' || kind === 'sensitivity';
}
