import { formatQuantity } from '../report/formatQuantity.ts';
import { cleanText } from '../report/plainText.ts';
import { faultsFromIssues } from '../scenario/faultsFromIssues.ts';
import type { Question } from './question.ts';

/** An answer as it will stand in the file, or what is wrong with it. */
export type ReadAnswer =
  | {
      readonly answer: string | number;
      /** The value in the unit of the reports where another unit was written; else empty. */
      readonly readBack: string;
    }
  | { readonly wrong: string };

/** A number without a unit, as YAML reads it. */
const BARE_NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/** A number that its unit follows without a space. */
const BEFORE_UNIT = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?(?=[^\s\d.,])/i;

/** Characters of a refused title that are repeated. */
const LONGEST_SHOWN = 40;

/** Reads one answer as the scenario file would read it in its place. */
export function readAnswer(question: Question, text: string): ReadAnswer {
  const written = asWritten(question, text.trim());
  const read = question.schema.safeParse(written);
  if (read.success) return { answer: written, readBack: readBack(question, written, read.data) };
  const [fault] = faultsFromIssues(read.error.issues);
  const subject = question.takes === 'text' ? `${shown(text)} ` : '';
  return { wrong: cleanText(`${subject}${fault?.message}; expected ${fault?.expected}`) };
}

function asWritten({ takes }: Question, text: string): string | number {
  if (takes === 'capitals') return text.toUpperCase();
  if (takes === 'text') return text;
  if (takes === 'number' && BARE_NUMBER.test(text)) return Number(text);
  if (/^[a-z]+$/i.test(text)) return text.toLowerCase();
  return text.replace(/\s+/g, ' ').replace(BEFORE_UNIT, '$& ');
}

function readBack({ unit }: Question, written: string | number, value: unknown): string {
  if (unit === undefined || typeof value !== 'number') return '';
  const inReport = formatQuantity(value, unit, { system: 'SI' });
  return Number.parseFloat(inReport) === Number.parseFloat(String(written)) ? '' : inReport;
}

function shown(text: string): string {
  return JSON.stringify(text.length > LONGEST_SHOWN ? `${text.slice(0, LONGEST_SHOWN)}…` : text);
}
