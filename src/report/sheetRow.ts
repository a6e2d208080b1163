import type { CommissioningRow } from '../survey/commissioning/commissioningSheet.ts';
import type { TestGroup } from '../survey/commissioning/test.ts';
import type { UnitSystem } from './formatQuantity.ts';
import {
  clampLines,
  durationLines,
  sentence,
  showsSentence,
  tachometerLines,
  verdictWords,
} from './sheetWords.ts';

/** Columns of the sheet, in order, on paper and in the file. */
export const SHEET_COLUMNS = [
  { key: 'number', head: 'No.' },
  { key: 'test', head: 'Test' },
  { key: 'hands', head: 'How it is done' },
  { key: 'expected', head: 'What should happen' },
  { key: 'shows', head: 'What the simulation shows' },
  { key: 'verdict', head: 'Agrees?' },
  { key: 'clamp', head: 'Clamp meter, A r.m.s.' },
  { key: 'tachometer', head: 'Tachometer, r/min' },
  { key: 'duration', head: 'Duration' },
  { key: 'measured', head: 'Measured' },
  { key: 'remarks', head: 'Remarks' },
] as const;

/** Name of a column. */
export type SheetColumn = (typeof SHEET_COLUMNS)[number]['key'];

/** A line of a cell. */
export interface SheetLine {
  readonly text: string;
  /** danger: somebody can be hurt; note: to know; strong: to be seen at a glance. */
  readonly kind?: 'danger' | 'note' | 'strong';
}

/** A row as text, cell by cell. */
export type SheetRowText = Readonly<Record<SheetColumn, readonly SheetLine[]>>;

/** Headings of the groups. */
export const GROUP_TITLES: Readonly<Record<TestGroup, string>> = {
  running: 'Starting',
  reversing: 'Opposite button',
  stopping: 'Stopping',
  emergencyStop: 'Emergency stop',
  overload: 'Overload relay',
  supply: 'Supply lost and back',
  handling: 'Hands in a hurry',
  faults: 'Device faults: in thought only, never made on the machine',
};

/** The cells of a row. Measured values and remarks are for a pencil. */
export function sheetRowText(row: CommissioningRow, units: UnitSystem): SheetRowText {
  const { number, test, shows, dangers } = row;
  const verdict = verdictWords(row);
  const plain = (texts: readonly string[]): SheetLine[] => texts.map((text) => ({ text }));
  return {
    number: plain([String(number)]),
    test: plain([test.title]),
    hands: [
      ...(test.group === 'faults' ? [{ text: 'In thought only.', kind: 'strong' } as const] : []),
      { text: test.hands },
    ],
    expected: [
      { text: sentence(test.requirements.map(({ words }) => words).join('; ')) },
      ...(test.remark === null ? [] : [{ text: test.remark, kind: 'note' } as const]),
    ],
    shows: [
      ...plain(shows === null ? ['—'] : [showsSentence(row, shows, units)]),
      ...dangers.map((text) => ({ text: `Dangerous: ${text}`, kind: 'danger' }) as const),
    ],
    verdict: [
      { text: verdict.head, kind: 'strong' },
      ...(verdict.why === '' ? [] : [{ text: sentence(verdict.why) }]),
    ],
    clamp: plain(shows === null ? [] : clampLines(shows)),
    tachometer: plain(shows === null ? [] : tachometerLines(shows)),
    duration: [
      ...(shows === null ? [] : [{ text: `from: ${test.markWords}`, kind: 'note' } as const]),
      ...plain(shows === null ? [] : durationLines(shows)),
    ],
    measured: [],
    remarks: [],
  };
}
