import type { Criterion } from '../assess/criterion.ts';
import { csvText } from '../recording/csvText.ts';
import { asciiText } from './asciiText.ts';
import { outcomeText } from './judgement/outcomeMark.ts';
import { cleanText } from './plainText.ts';

/** Columns; numbers are SI, temperatures °C, a missing one is empty. */
const HEAD = [
  'key',
  'criterion',
  'value',
  'limit',
  'limit_is',
  'unit',
  'margin',
  'outcome',
  'required',
  'source',
  'remark',
] as const;

/** The criteria as RFC 4180 text with all digits, in SI whatever the report's units. */
export function renderCriteriaCsv(criteria: readonly Criterion[]): string {
  const rows = criteria.map((criterion) => {
    const { key, name, value, limit, limitIs, unit, margin, required, source, remark } = criterion;
    return [
      key,
      name,
      number(value),
      number(limit),
      `at ${limitIs}`,
      unit,
      number(margin),
      outcomeText(criterion).words,
      required ? 'yes' : 'no',
      source,
      remark,
    ];
  });
  return [HEAD, ...rows].map((fields) => `${fields.map(field).join(',')}\r\n`).join('');
}

/** A number as it is; text in ASCII, and never a formula. */
function field(text: string): string {
  return text !== '' && Number.isFinite(Number(text)) ? text : csvText(asciiText(cleanText(text)));
}

/** An infinite value has no number in a table. */
function number(value: number | null): string {
  return value !== null && Number.isFinite(value) ? String(value) : '';
}
