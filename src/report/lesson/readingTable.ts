import { type Reading, readingHead } from './readings.ts';

/** Readings side by side: a column for each instant, a row for each thing that is read. */
export interface ReadingTable {
  readonly heads: readonly string[];
  readonly rows: readonly { readonly label: string; readonly cells: readonly string[] }[];
}

/** Readings as a table; what one of them lacks is an empty cell. */
export function readingTable(readings: readonly Reading[]): ReadingTable {
  const labels = [...new Set(readings.flatMap(({ rows }) => rows.map(({ label }) => label)))];
  return {
    heads: readings.map(readingHead),
    rows: labels.map((label) => ({
      label,
      cells: readings.map(({ rows }) => rows.find((row) => row.label === label)?.text ?? ''),
    })),
  };
}
