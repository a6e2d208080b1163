import { displayWidth, padToWidth } from './displayWidth.ts';

/** Between two columns. */
const GAP = '  ';

/**
 * Rows of cells as lines of a terminal: each column as wide as its widest cell, the first to the left, the others to the
 * right, as numbers stand.
 *
 * @param rows all of one length; the head's rows are the caller's to put first
 */
export function textTable(rows: readonly (readonly string[])[]): string[] {
  const widths = (rows[0] ?? []).map((_, i) => Math.max(...rows.map((row) => displayWidth(row[i] ?? ''))));
  return rows.map((row) =>
    row
      .map((cell, i) => padToWidth(cell, i === 0 ? widths[i]! : -widths[i]!))
      .join(GAP)
      .trimEnd(),
  );
}
