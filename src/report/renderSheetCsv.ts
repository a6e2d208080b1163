import { csvText } from '../recording/csvText.ts';
import type { CommissioningRow, CommissioningSheet } from '../survey/commissioning/commissioningSheet.ts';
import { asciiText } from './asciiText.ts';
import type { UnitSystem } from './formatQuantity.ts';
import { cleanText } from './plainText.ts';
import { GROUP_TITLES, SHEET_COLUMNS, type SheetLine, sheetRowText } from './sheetRow.ts';

/** Columns ahead of those of the printed sheet. */
const FIRST = ['Scenario', 'Group'] as const;
/** Columns behind them: the readings as numbers, SI. */
const LAST = [
  'clamp_before_A',
  'clamp_transformer_A',
  'clamp_with_dc_A',
  'clamp_line',
  'final_speed_radps',
  'first_duration_s',
] as const;

/**
 * The sheet as RFC 4180 text: the columns of the printed sheet between scenario and group and the bare numbers. Our own
 * symbols are written in ASCII. A field that a spreadsheet would take for a formula begins with an apostrophe.
 *
 * @param options `units` in which quantities are written
 */
export function renderSheetCsv(sheet: CommissioningSheet, options: { readonly units: UnitSystem }): string {
  const head = [...FIRST, ...SHEET_COLUMNS.map((column) => column.head), ...LAST];
  const rows = sheet.rows.map((row) => {
    const text = sheetRowText(row, options.units);
    return [
      cleanText(sheet.scenario.title),
      GROUP_TITLES[row.test.group],
      ...SHEET_COLUMNS.map(({ key }) => cellText(text[key])),
    ]
      .map((field) => csvText(asciiText(field)))
      .concat(numbers(row));
  });
  return [head.map(csvText), ...rows].map((fields) => `${fields.join(',')}\r\n`).join('');
}

function cellText(lines: readonly SheetLine[]): string {
  return lines.map(({ text }) => text).join('; ');
}

function numbers({ shows }: CommissioningRow): string[] {
  if (shows === null) return LAST.map(() => '');
  const { before, operation, tachometer } = shows.readings;
  const number = (value: number | null | undefined) =>
    value === null || value === undefined ? '' : String(value);
  return [
    number(before?.transformer.value),
    number(operation?.transformer.value),
    number(operation?.hall.value),
    operation?.hall.phase ?? '',
    number(tachometer.at(-1)?.speed),
    number(shows.durations[0]?.value),
  ];
}
