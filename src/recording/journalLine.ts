import type { RowStatus, RowVerdict, SurveyRow } from '../survey/spec/survey.ts';
import { fnv1a } from './fnv1a.ts';

/** How many figures each row of one survey has. */
export interface RowShape {
  readonly fields: number;
  readonly metrics: number;
}

const STATUSES: readonly RowStatus[] = ['good', 'refused', 'failed', 'unbalanced'];
const OUTCOMES: readonly RowVerdict['outcome'][] = ['suitable', 'notSuitable', 'notJudged'];

/**
 * One run as one line of JSON, without a line break: run, values, status, reason, metrics, verdict, and a check over the rest.
 * Every number comes back with the same bits.
 *
 * @throws RangeError when a number is not finite: JSON could not hold it, and no row has one
 */
export function lineOfRow(row: SurveyRow): string {
  const { verdict } = row;
  const judged = verdict === null ? 'null' : JSON.stringify([verdict.outcome, verdict.decisive]);
  const body = [
    numberText(row.run),
    `[${row.values.map(numberText).join(',')}]`,
    JSON.stringify(row.status),
    JSON.stringify(row.reason),
    `[${row.metrics.map((value) => (value === null ? 'null' : numberText(value))).join(',')}]`,
    judged,
  ].join(',');
  return `[${body},"${fnv1a(body)}"]`;
}

/**
 * Reads what {@link lineOfRow} wrote.
 *
 * @returns null where the line is not exactly one that was written for a survey of this shape
 */
export function rowOfLine(line: string, shape: RowShape): SurveyRow | null {
  const read = parsed(line);
  if (!Array.isArray(read)) return null;
  const [run, values, status, reason, metrics, judged] = read as unknown[];
  if (typeof run !== 'number' || !Number.isSafeInteger(run) || run < 0) return null;
  if (!isList(values, shape.fields, isNumber) || !isList(metrics, shape.metrics, isNumberOrNull)) return null;
  if (!isOneOf(STATUSES, status) || !(reason === null || typeof reason === 'string')) return null;
  const verdict = judged === null ? null : verdictOf(judged);
  if (verdict === undefined) return null;
  const row: SurveyRow = { run, values, status, reason, metrics, verdict };
  // Covers the check, and anything that JSON forgives: blanks, further elements, other spellings of a number.
  return lineOfRow(row) === line ? row : null;
}

/** Shortest digits that give the same double; JSON's own writer drops the sign of −0. */
function numberText(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`${value} in a row; expected a finite number`);
  return Object.is(value, -0) ? '-0' : String(value);
}

function parsed(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return undefined;
  }
}

function verdictOf(judged: unknown): RowVerdict | undefined {
  if (!Array.isArray(judged)) return undefined;
  const [outcome, decisive] = judged as unknown[];
  return isOneOf(OUTCOMES, outcome) && typeof decisive === 'string' ? { outcome, decisive } : undefined;
}

function isOneOf<T>(words: readonly T[], word: unknown): word is T {
  return words.includes(word as T);
}

function isNumber(value: unknown): value is number {
  return Number.isFinite(value);
}

function isNumberOrNull(value: unknown): value is number | null {
  return value === null || isNumber(value);
}

function isList<T>(list: unknown, length: number, is: (item: unknown) => item is T): list is T[] {
  return Array.isArray(list) && list.length === length && list.every(is);
}
