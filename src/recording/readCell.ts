import { dayOfDate, yearOfDay } from '../numeric/calendarDay.ts';
import { closestWord } from '../scenario/closestWord.ts';
import { dimensions } from '../scenario/dimension.ts';
import type { StatedLockedRotorCurrent } from '../scenario/nameplateInput.ts';
import { quoted, readQuantity } from '../scenario/parseQuantity.ts';
import type { Fault } from '../scenario/problem.ts';
import { readRatio } from '../scenario/ratioField.ts';
import type { PlanColumn } from './planColumns.ts';
import { TABLE_YEARS } from './tableYears.ts';

/** What a cell holds: SI, shares of one, days since 1970-01-01, or a word. */
export type CellValue = number | string | StatedLockedRotorCurrent;

/** Longest text a cell may hold. */
const LONGEST_CELL = 200;
/** A locked rotor takes more than rated current; beyond twenty times nothing is built. */
const LOCKED_ROTOR_MULTIPLE = { min: 1, max: 20 } as const;
/** Torques over rated torque: beyond ten times nothing is built. */
const MOST_TORQUE_MULTIPLE = 10;

const PLAIN_NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;

/**
 * Reads one cell of the table of starters.
 *
 * @param text without blanks around it, not empty
 * @returns the value, or what is wrong and what would be right
 */
export function readCell(text: string, { kind, example }: PlanColumn): CellValue | Fault {
  if (text.length > LONGEST_CELL)
    return fault(
      'tooLarge',
      `${quoted(text)} is too long`,
      `at most ${LONGEST_CELL} characters, such as \`${example}\``,
    );
  switch (kind.is) {
    case 'text':
      return text;
    case 'quantity': {
      const { dimension, min, max, aboveMin } = kind.bounds as typeof kind.bounds & { aboveMin?: boolean };
      const read = readQuantity(text, dimension);
      if (typeof read !== 'number') return { ...read, expected: `${read.expected} (as in \`${example}\`)` };
      const { si } = dimensions[dimension];
      return within(text, read, { min, max, aboveMin: aboveMin === true }, ` ${si}`);
    }
    case 'number':
      return plainNumber(text, kind, example);
    case 'share': {
      const read = PLAIN_NUMBER.test(text)
        ? Number(text)
        : readRatio(text, 'fraction', expectedShare(example));
      if (typeof read !== 'number') return read;
      const hint = read > 1 && PLAIN_NUMBER.test(text) ? ` (\`${text} %\`?)` : '';
      if (read > 1 || read < 0 || (kind.aboveMin === true && read === 0))
        return fault('outOfRange', `${text} is out of range`, `${expectedShare(example)}${hint}`);
      return read;
    }
    case 'multiple': {
      const read = PLAIN_NUMBER.test(text)
        ? Number(text)
        : readRatio(text, 'multiple', `a multiple, such as \`${example}\``);
      return typeof read === 'number'
        ? within(text, read, { min: 0, max: MOST_TORQUE_MULTIPLE, aboveMin: true }, ' times')
        : read;
    }
    case 'lockedRotorCurrent':
      return lockedRotorCurrent(text, example);
    case 'date':
      return readDate(text, example);
    case 'word': {
      const same = kind.words.find((word) => word.toLowerCase() === text.toLowerCase());
      if (same !== undefined) return same;
      const close = closestWord(text, kind.words);
      const all = `one of ${kind.words.join(', ')}`;
      return fault(
        'unknownWord',
        `${quoted(text)} is not known here`,
        close === undefined ? all : `\`${close}\` (${all})`,
      );
    }
  }
}

function readDate(text: string, example: string): number | Fault {
  const expected = `year, month and day, such as \`${example}\``;
  const day = dayOfDate(text);
  if (day === null) return fault('notANumber', `${quoted(text)} is no date of the calendar`, expected);
  const year = yearOfDay(day);
  const { first, last } = TABLE_YEARS;
  return year >= first && year <= last
    ? day
    : fault('outOfRange', `${text} is out of range`, `a date from ${first} to ${last}`);
}

function plainNumber(
  text: string,
  kind: {
    readonly min: number;
    readonly max: number;
    readonly aboveMin?: true;
    readonly whole?: 'even' | 'any';
  },
  example: string,
): number | Fault {
  if (!PLAIN_NUMBER.test(text))
    return fault(
      'notANumber',
      `${quoted(text)} is no plain number`,
      `a number without unit and without separators between thousands, such as \`${example}\``,
    );
  const value = Number(text);
  if (kind.whole === 'even' && value % 2 !== 0)
    return fault('outOfRange', `${text} is no even number`, `an even number, such as \`${example}\``);
  return within(text, value, { min: kind.min, max: kind.max, aboveMin: kind.aboveMin === true }, '');
}

function lockedRotorCurrent(text: string, example: string): StatedLockedRotorCurrent | Fault {
  const expected = `a multiple of rated current or amperes, such as \`${example}\``;
  const amperes = readQuantity(text, 'current');
  if (typeof amperes === 'number')
    return amperes > 0 && amperes <= 1e5
      ? { kind: 'amperes', amperes }
      : fault('outOfRange', `${text} is out of range`, expected);
  const ofRated = readRatio(text, 'multiple', expected);
  if (typeof ofRated !== 'number') return { ...amperes, expected };
  const { min, max } = LOCKED_ROTOR_MULTIPLE;
  return ofRated >= min && ofRated <= max
    ? { kind: 'multiple', ofRated }
    : fault('outOfRange', `${text} is out of range`, `from ${min} to ${max} times rated current`);
}

function within(
  text: string,
  value: number,
  range: { readonly min: number; readonly max: number; readonly aboveMin: boolean },
  unit: string,
): number | Fault {
  if (
    Number.isFinite(value) &&
    value <= range.max &&
    value >= range.min &&
    !(range.aboveMin && value === range.min)
  )
    return value + 0;
  return fault(
    'outOfRange',
    `${text} is out of range`,
    `${range.aboveMin ? 'above' : 'from'} ${range.min} to ${range.max}${unit}`,
  );
}

function expectedShare(example: string): string {
  return `a share from 0 to 100 %, such as \`${example}\``;
}

function fault(code: Fault['code'], message: string, expected: string): Fault {
  return { code, message, expected };
}
