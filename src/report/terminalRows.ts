import { displayWidth, padToWidth, wrapToWidth } from './displayWidth.ts';

/** One row of a table in the terminal. */
export interface TerminalRow {
  readonly label: string;
  /** Number with unit: never cut, as half a number would mislead. */
  readonly value: string;
  readonly note: string;
}

/** A line of the terminal; a row has more of them where its note is long. */
export interface RowLine {
  /** Label and value, or the blanks below them. */
  readonly head: string;
  readonly note: string;
}

/** Between value and note. */
const GAP = '  ';
/** A note in fewer columns than this would be a column of single words: it stands on lines of its own. */
const LEAST_NOTE = 16;

/**
 * Lays rows out in columns of at least the given widths, values to the right. The value column grows with the longest
 * value, notes wrap, and where label and value do not fit side by side the value goes to the next line.
 *
 * @param width columns no line exceeds; only a value or a word longer than that is broken
 */
export function rowLines(
  rows: readonly TerminalRow[],
  labelWidth: number,
  valueWidth: number,
  width: number,
): RowLine[] {
  const valueColumn = Math.max(valueWidth, ...rows.map((row) => displayWidth(row.value)));
  const headWidth = labelWidth + valueColumn + GAP.length;
  return rows.flatMap((row) => {
    if (headWidth + LEAST_NOTE > width) return stackedLines(row, width);
    const head = padToWidth(row.label, labelWidth) + padToWidth(row.value, -valueColumn) + GAP;
    return wrapToWidth(row.note, width - headWidth).map((note, i) => ({
      head: i === 0 ? head : ' '.repeat(headWidth),
      note,
    }));
  });
}

function stackedLines(row: TerminalRow, width: number): RowLine[] {
  const indent = GAP;
  return [
    ...wrapToWidth(row.label, width).map((head) => ({ head, note: '' })),
    ...wrapToWidth(row.value, width - indent.length).map((head) => ({ head: indent + head, note: '' })),
    ...wrapToWidth(row.note, width - indent.length)
      .filter((note) => note !== '')
      .map((note) => ({ head: indent, note })),
  ];
}
