import { createHash } from 'node:crypto';
import type { Survey } from '../survey/spec/survey.ts';

/**
 * What decides a survey's rows, as 64 hexadecimal digits (SHA-256): the scenario's text, fields, metrics, verdict, seed and task. Title,
 * description and names of files decide nothing.
 */
export function fingerprint(survey: Survey): string {
  const { title: _title, description: _description, base, ...rest } = survey;
  const meaning = { text: base.text, ...rest };
  return createHash('sha256').update(JSON.stringify(meaning, sortedKeys)).digest('hex');
}

/** The order in which keys were put into an object says nothing. */
function sortedKeys(_: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
}
