import Papa from 'papaparse';
import type { Problem } from '../scenario/problem.ts';
import { ScenarioError } from '../scenario/scenarioError.ts';

/** One field with the place where it begins, counted from 1. */
export interface CsvCell {
  /** Without blanks around it. */
  readonly text: string;
  readonly line: number;
  readonly column: number;
}

/** A table read from CSV text: rows without any text are left out. */
export interface CsvTable {
  readonly header: readonly CsvCell[];
  readonly rows: readonly (readonly CsvCell[])[];
}

/** What a table may be at most; beyond it is refused. */
export interface CsvLimits {
  /** Characters; refused unread. */
  readonly characters: number;
  readonly rows: number;
}

/** For tables that people write. */
const WRITTEN_TABLE: CsvLimits = { characters: 2_000_000, rows: 20_000 };
/** What may stand between fields, in the order of trial. */
const DELIMITERS = [',', ';', '\t'] as const;

/**
 * Reads RFC 4180 text: fields between commas, semicolons or tabs (whichever the header holds most of), quoted or not, any line
 * ends, with or without a byte order mark.
 *
 * @param file name for the messages
 * @throws ScenarioError where the text is no table
 */
export function csvTable(text: string, file: string, limits: CsvLimits = WRITTEN_TABLE): CsvTable {
  const refuse = (code: Problem['code'], message: string, expected: string, line: number | null = null) =>
    new ScenarioError([
      { code, message, expected, file, line, column: line === null ? null : 1, path: '', found: null },
    ]);
  const expected = 'a table as CSV text: a header line, then one line for each row';
  if (text.length > limits.characters)
    throw refuse(
      'tooLarge',
      `${(text.length / 1e6).toFixed(1)} million characters are no such table`,
      `at most ${limits.characters / 1e6} million`,
    );
  if (text.includes('\0')) throw refuse('notText', 'holds bytes that are not text', expected);
  const body = text.replace(/^\uFEFF/u, '');
  if (body.trim() === '') throw refuse('empty', 'there is nothing in it', expected);
  const delimiter = delimiterOf(body);
  const records: CsvCell[][] = [];
  let from = 0;
  let line = 1;
  let open: number | null = null;
  Papa.parse<string[]>(body, {
    delimiter,
    step: ({ data, errors, meta }) => {
      const raw = body.slice(from, meta.cursor);
      if (errors.some(({ type }) => type === 'Quotes')) open ??= line;
      const cells = data.map((field, k) => ({ text: field.trim(), ...placeOf(raw, k, delimiter, line) }));
      if (cells.some((cell) => cell.text !== '')) records.push(cells);
      line += lineBreaks(raw);
      from = meta.cursor;
    },
  });
  if (open !== null)
    throw refuse(
      'syntax',
      'a quoted field is not closed, or goes on after its closing quote',
      'quotes around the whole field, and doubled inside it',
      open,
    );
  const [header, ...rows] = records;
  if (header === undefined) throw refuse('empty', 'there is nothing in it', expected);
  if (rows.length > limits.rows)
    throw refuse('tooLarge', `${rows.length} rows are too many`, `at most ${limits.rows}`);
  return { header, rows };
}

/** The one that the first line with text holds most of, outside quotes. */
function delimiterOf(body: string): string {
  const first = body.split(/\r\n|\r|\n/u).find((row) => row.trim() !== '') ?? '';
  const bare = first.replace(/"[^"]*"/gu, '');
  const count = (mark: string) => bare.split(mark).length;
  return DELIMITERS.reduce((best, mark) => (count(mark) > count(best) ? mark : best));
}

/** Where the k-th field of a record begins. */
function placeOf(raw: string, k: number, delimiter: string, line: number): { line: number; column: number } {
  let seen = 0;
  let quoted = false;
  let at = line;
  let column = 1;
  for (let i = 0; i < raw.length && seen < k; i++) {
    const mark = raw[i]!;
    if (mark === '"') quoted = !quoted;
    const breaks = mark === '\n' || (mark === '\r' && raw[i + 1] !== '\n');
    if (breaks) at++;
    column = breaks ? 1 : column + 1;
    if (mark === delimiter && !quoted) seen++;
  }
  return { line: at, column };
}

function lineBreaks(raw: string): number {
  return raw.match(/\r\n|\r|\n/gu)?.length ?? 0;
}
