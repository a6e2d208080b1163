import { WEAR_EVENTS, type WearEvent } from '../assess/wear/contactWearTypes.ts';
import { closestWord } from '../scenario/closestWord.ts';
import { quoted } from '../scenario/parseQuantity.ts';
import type { Problem } from '../scenario/problem.ts';
import { ScenarioError } from '../scenario/scenarioError.ts';
import { type CsvCell, csvTable } from './csvTable.ts';
import { LOG_COLUMNS, LOG_OPERATIONS } from './logColumns.ts';
import { type LogTime, readTime } from './readTime.ts';

/** One line of a log of operations. */
export interface LoggedOperation {
  /** What the starter did. */
  readonly event: WearEvent;
  readonly time: LogTime;
}

/** What a starter has done, in order of time. */
export interface OperationLog {
  readonly operations: readonly LoggedOperation[];
  /** What had to be put right in reading it, in words. */
  readonly remarks: readonly string[];
}

/** The kind of operation each word stands for. */
const EVENTS: ReadonlyMap<string, WearEvent> = new Map(
  WEAR_EVENTS.flatMap((event) => LOG_OPERATIONS[event].words.map((word) => [word, event] as const)),
);

/** The kinds as a log is best written. */
const EVENT_WORDS = WEAR_EVENTS.map((event) => LOG_OPERATIONS[event].words[0]);

/** A year of two operations a minute is a million lines. */
const LIMITS = { characters: 60_000_000, rows: 1_200_000 } as const;

/** Characters of a wrong value that are shown. */
const SHOWN = 60;
/** More problems than these help nobody. */
const MOST_PROBLEMS = 100;

/**
 * Reads a log of operations: CSV text with a header and the columns `time` (ISO 8601, a date or a date with a time of day) and
 * `operation` (start, coast or stop, plug stop, reversal, inch). Other columns are left alone. Lines out of order are
 * sorted; a line that repeats another to the second counts once (operations of a day alone, without a time, all count);
 * `remarks` says how many.
 *
 * @param file name for the messages
 * @throws ScenarioError with every line that cannot be read, and what would be right
 */
export function parseOperationLog(text: string, file: string): OperationLog {
  const { header, rows } = csvTable(text, file, LIMITS);
  const problems: Problem[] = [];
  const timeColumn = columnOf('time', header, file, problems);
  const operationColumn = columnOf('operation', header, file, problems);
  throwIfAny(problems);
  const read: LoggedOperation[] = [];
  for (const row of rows) {
    const time = readTimeCell(row, timeColumn, file, problems);
    const event = readEventCell(row, operationColumn, file, problems);
    if (time !== null && event !== null) read.push({ time, event });
    if (problems.length > MOST_PROBLEMS) break;
  }
  if (rows.length === 0)
    problems.push(
      problemAt(header[0]!, file, 'empty', '', 'the log holds no operation', 'a line for each operation'),
    );
  throwIfAny(problems);
  return inOrder(read);
}

function throwIfAny(problems: readonly Problem[]): void {
  const [first, ...more] = problems;
  if (first !== undefined) throw new ScenarioError([first, ...more]);
}

/** Index of a column in the header; −1 with a problem where it is not there exactly once. */
function columnOf(
  name: keyof typeof LOG_COLUMNS,
  header: readonly CsvCell[],
  file: string,
  problems: Problem[],
): number {
  const names: readonly string[] = LOG_COLUMNS[name].names;
  const found = header.flatMap(({ text }, k) => (names.includes(text.toLowerCase()) ? [k] : []));
  const expected = `a header with the columns ${Object.keys(LOG_COLUMNS).join(' and ')}`;
  if (found.length === 0)
    problems.push(
      problemAt(header[0]!, file, 'missingKey', name, `the column \`${name}\` is missing`, expected),
    );
  if (found.length > 1)
    problems.push(
      problemAt(
        header[found[1]!]!,
        file,
        'duplicateKey',
        name,
        `there are ${found.length} columns for \`${name}\``,
        'one of them',
      ),
    );
  return found[0] ?? -1;
}

function readTimeCell(
  row: readonly CsvCell[],
  column: number,
  file: string,
  problems: Problem[],
): LogTime | null {
  const cell = row[column];
  const expected = 'a date or a date with a time of day, such as `2026-03-31` or `2026-03-31T14:05:09`';
  if (cell === undefined || cell.text === '') {
    problems.push(problemAt(cell ?? row[0]!, file, 'missingKey', 'time', 'the time is missing', expected));
    return null;
  }
  const time = readTime(cell.text);
  if (time === null)
    problems.push(
      problemAt(
        cell,
        file,
        'notANumber',
        'time',
        `${quoted(cell.text)} is no time of the calendar`,
        expected,
      ),
    );
  return time;
}

function readEventCell(
  row: readonly CsvCell[],
  column: number,
  file: string,
  problems: Problem[],
): WearEvent | null {
  const cell = row[column];
  const expected = `one of ${EVENT_WORDS.join(', ')}`;
  if (cell === undefined || cell.text === '') {
    problems.push(
      problemAt(
        cell ?? row[0]!,
        file,
        'missingKey',
        'operation',
        'the kind of operation is missing',
        expected,
      ),
    );
    return null;
  }
  const word = cell.text.toLowerCase().replace(/\s+/gu, ' ');
  const event = EVENTS.get(word);
  if (event !== undefined) return event;
  const close = closestWord(word, [...EVENTS.keys()]);
  problems.push(
    problemAt(
      cell,
      file,
      'unknownWord',
      'operation',
      `${quoted(cell.text)} is no kind of operation`,
      close === undefined ? expected : `\`${close}\` (${expected})`,
    ),
  );
  return null;
}

function problemAt(
  cell: CsvCell,
  file: string,
  code: Problem['code'],
  path: string,
  message: string,
  expected: string,
): Problem {
  return {
    code,
    message,
    expected,
    file,
    line: cell.line,
    column: cell.column,
    path,
    found: cell.text.slice(0, SHOWN),
  };
}

function inOrder(read: readonly LoggedOperation[]): OperationLog {
  const remarks: string[] = [];
  const late = read.filter(({ time }, k) => k > 0 && time.seconds < read[k - 1]!.time.seconds).length;
  if (late > 0) remarks.push(`${late} of ${read.length} lines are earlier than the line before them: sorted`);
  const withOffset = read.filter(({ time }) => time.hasOffset).length;
  const withClock = read.filter(({ time }) => !time.dayOnly).length;
  if (withOffset > 0 && withOffset < withClock)
    remarks.push(
      'some times state their offset from universal time and some do not: those without are taken as universal time',
    );
  const seen = new Set<string>();
  const operations = read
    .filter(({ time, event }) => {
      const key = `${time.seconds} ${event}`;
      if (time.dayOnly || !seen.has(key)) {
        seen.add(key);
        return true;
      }
      return false;
    })
    .sort((a, b) => a.time.seconds - b.time.seconds);
  const twice = read.length - operations.length;
  if (twice > 0)
    remarks.push(
      `${twice} ${twice === 1 ? 'line repeats' : 'lines repeat'} another with the same time and kind: counted once`,
    );
  return { operations, remarks };
}
