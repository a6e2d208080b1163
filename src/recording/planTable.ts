import { dateOfDay } from '../numeric/calendarDay.ts';
import { closestWord } from '../scenario/closestWord.ts';
import type { Fault, Problem } from '../scenario/problem.ts';
import { ScenarioError } from '../scenario/scenarioError.ts';
import type { PlanRow } from '../survey/plan/planRow.ts';
import { type CsvCell, csvTable } from './csvTable.ts';
import { PLAN_COLUMN_NAMES, PLAN_COLUMNS, type PlanColumnName } from './planColumns.ts';
import { type PlanCells, planRowOf } from './planRowOf.ts';
import { type CellValue, readCell } from './readCell.ts';
import { refusedCharacter } from './refusedCharacter.ts';

/** Problems that are listed; a table that is broken throughout has the same one on every line. */
const MOST_PROBLEMS = 50;
/** What people write into a cell of which they know nothing. */
const NOT_STATED: readonly string[] = ['', '-', '–', '?'];

/**
 * Reads a table of starters: CSV text with a header, one starter a row, every quantity with its unit in the cell.
 *
 * @param file name for the messages
 * @returns the rows in their order; what a row does not state is null
 * @throws ScenarioError with every problem found, each with line, column, name of the column and what would be right
 */
export function planTable(text: string, file: string): readonly PlanRow[] {
  const { header, rows } = csvTable(text, file);
  const problems: Problem[] = [];
  const report = ({ line, column, text: found }: CsvCell, path: string, fault: Fault) =>
    problems.push({ ...fault, file, line, column, path, found: found.slice(0, 60) });
  const names = columnsOf(header, report);
  if (!names.includes('tag') && problems.length === 0)
    report(header[0]!, 'tag', {
      code: 'missingKey',
      message: 'the table has no such column',
      expected: 'a column `tag` that names each starter',
    });
  const read = problems.length > 0 ? [] : rows.map((cells) => rowOf(cells, names, report));
  refuseTwins(rows, read, names, report);
  if (rows.length === 0 && problems.length === 0)
    report(header[0]!, '', {
      code: 'empty',
      message: 'the table has no rows',
      expected: 'one row for each starter',
    });
  const [first, ...others] = problems;
  if (first === undefined) return read.map(({ row }) => row);
  if (others.length < MOST_PROBLEMS) throw new ScenarioError([first, ...others]);
  const last = others[MOST_PROBLEMS - 1]!;
  const rest: Problem = {
    ...last,
    message: `${others.length + 1 - MOST_PROBLEMS} further problems are not listed`,
    expected: 'the ones above put right first',
  };
  throw new ScenarioError([first, ...others.slice(0, MOST_PROBLEMS - 1), rest]);
}

type Report = (cell: CsvCell, path: string, fault: Fault) => void;

/** What the columns are called; underscores, hyphens and capitals do not count. */
function columnsOf(header: readonly CsvCell[], report: Report): readonly (PlanColumnName | null)[] {
  const names: (PlanColumnName | null)[] = [];
  for (const cell of header) {
    const refused = refusedCharacter(cell.text);
    if (refused !== null) {
      report(cell, 'header', refused);
      names.push(null);
      continue;
    }
    const name = PLAN_COLUMN_NAMES.find((known) => plain(known) === plain(cell.text)) ?? null;
    if (cell.text === '') {
      names.push(null);
      continue;
    }
    if (name === null) {
      const close = closestWord(plain(cell.text), PLAN_COLUMN_NAMES.map(plain));
      const meant = PLAN_COLUMN_NAMES.find((known) => plain(known) === close);
      const bracket = /[[(]/u.test(cell.text) ? '; units stand in the cells' : '';
      report(cell, 'header', {
        code: 'unknownKey',
        message: `${JSON.stringify(cell.text.slice(0, 60))} is no column of this table`,
        expected: meant === undefined ? `one of ${PLAN_COLUMN_NAMES.join(', ')}` : `\`${meant}\`${bracket}`,
      });
    } else if (names.includes(name))
      report(cell, 'header', {
        code: 'duplicateKey',
        message: `the column ${name} stands there twice`,
        expected: 'each column once',
      });
    names.push(name);
  }
  return names;
}

function plain(name: string): string {
  return name
    .toLowerCase()
    .replace(/[\s_-]+/gu, ' ')
    .trim();
}

interface ReadRow {
  readonly row: PlanRow;
  readonly tag: CsvCell;
}

function rowOf(
  cells: readonly CsvCell[],
  names: readonly (PlanColumnName | null)[],
  report: Report,
): ReadRow {
  const values: Partial<Record<PlanColumnName, CellValue>> = {};
  const places: Partial<Record<PlanColumnName, CsvCell>> = {};
  const start = cells[0]!;
  const tag = cells[names.indexOf('tag')] ?? start;
  const called = refusedCharacter(tag.text) === null ? tag.text.replace(/\s+/gu, ' ').slice(0, 40) : '';
  const who = called === '' ? '' : ` of ${called}`;
  for (const [k, cell] of cells.entries()) {
    const name = names[k] ?? null;
    const refused = refusedCharacter(cell.text);
    if (refused !== null) {
      report(cell, `${name ?? `field ${k + 1}`}${who}`, refused);
      continue;
    }
    if (name === null) {
      if (cell.text !== '')
        report(cell, `field ${k + 1}${who}`, {
          code: 'unknownKey',
          message: `${JSON.stringify(cell.text.slice(0, 60))} stands under no header`,
          expected: `${names.length} fields as in the header; text that holds the separator stands in quotes`,
        });
      continue;
    }
    if (NOT_STATED.includes(cell.text)) continue;
    const value = readCell(cell.text, PLAN_COLUMNS[name]);
    if (typeof value === 'object' && 'code' in value) report(cell, `${name}${who}`, value);
    else {
      values[name] = value;
      places[name] = cell;
    }
  }
  if (values.tag === undefined && refusedCharacter(tag.text) === null)
    report(tag, 'tag', { code: 'missingKey', message: 'is empty', expected: 'a name for the starter' });
  const { row, conflicts } = planRowOf(values as PlanCells);
  for (const { column, ...fault } of conflicts)
    report(places[column] ?? start, `${column}${who}`, { code: 'conflict', ...fault });
  return { row, tag };
}

function refuseTwins(
  rows: readonly (readonly CsvCell[])[],
  read: readonly ReadRow[],
  names: readonly (PlanColumnName | null)[],
  report: Report,
): void {
  const seen = new Map<string, number>();
  for (const [k, { row, tag }] of read.entries()) {
    const line = rows[k]?.[names.indexOf('tag')]?.line ?? 0;
    const before = seen.get(row.tag);
    if (row.tag !== '' && before !== undefined)
      report(tag, 'tag', {
        code: 'duplicateKey',
        message: `${JSON.stringify(row.tag.slice(0, 60))} stands on line ${before} already`,
        expected: 'a tag of its own for each starter',
      });
    else seen.set(row.tag, line);
  }
}

/**
 * The latest day that stands in a table; null where there is none.
 *
 * @returns days since 1970-01-01
 */
export function latestDay(rows: readonly PlanRow[]): number | null {
  const days = rows.flatMap(({ duty, inspection }) =>
    [duty.contactsChanged, duty.counterDay, inspection?.day ?? null].filter((day) => day !== null),
  );
  return days.length === 0 ? null : Math.max(...days);
}

/** The first row with a day after the one given, in words; null where there is none. */
export function dayAfter(rows: readonly PlanRow[], asOf: number): string | null {
  for (const row of rows) {
    const latest = latestDay([row]);
    if (latest !== null && latest > asOf) return `${dateOfDay(latest)} (${row.tag.replace(/\s+/gu, ' ')})`;
  }
  return null;
}
