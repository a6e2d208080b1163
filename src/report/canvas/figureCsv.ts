import { csvText } from '../../recording/csvText.ts';
import { asciiText } from '../asciiText.ts';
import type { FigureSpec } from '../figureSpec.ts';
import { cleanText } from '../plainText.ts';
import { axisWords } from './readouts.ts';
import { neverFalls } from './samples.ts';

/** A column before it is written. */
interface Column {
  readonly head: string;
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/**
 * The curves of a figure as RFC 4180 text: one row for each place of the shared axis at which any curve has a value, empty where one
 * has none there. Curves that turn back, as over speed, get a column of places of their own beside them. Numbers are the shortest that
 * read back as the same, in the units of the head.
 */
export function figureCsv(spec: FigureSpec): string {
  const columns = columnsOf(spec);
  const table = columns.every(({ x }) => neverFalls(x))
    ? sharedTable(spec.x.label, columns)
    : pairedTable(spec.x.label, columns);
  return table.map((fields) => `${fields.join(',')}\r\n`).join('');
}

function columnsOf(spec: FigureSpec): Column[] {
  return spec.panels.flatMap((panel) => {
    if (panel.kind !== 'lines') return [];
    const { name, unit } = axisWords(panel.y.label);
    return panel.series.flatMap((series): Column[] => {
      const head = (what: string) =>
        [`${name} ${what}`.trim(), unit === '' ? '' : `(${unit})`].join(' ').trim();
      if (series.form === 'line') return [{ head: head(series.label), x: series.x, y: series.y }];
      return [
        { head: head(`${series.label} least`), x: series.x, y: series.low },
        { head: head(`${series.label} most`), x: series.x, y: series.high },
      ];
    });
  });
}

function sharedTable(axis: string, columns: readonly Column[]): string[][] {
  const rows: string[][] = [[headText(axis), ...columns.map(({ head }) => headText(head))]];
  const next = columns.map(() => 0);
  for (;;) {
    let x = Number.POSITIVE_INFINITY;
    columns.forEach((column, i) => {
      x = Math.min(x, column.x[next[i]!] ?? Number.POSITIVE_INFINITY);
    });
    if (x === Number.POSITIVE_INFINITY) return rows;
    const fields = columns.map((column, i) => {
      if (column.x[next[i]!] !== x) return '';
      const value = column.y[next[i]!]!;
      next[i] = next[i]! + 1;
      return numberText(value);
    });
    rows.push([numberText(x), ...fields]);
  }
}

function pairedTable(axis: string, columns: readonly Column[]): string[][] {
  const { name, unit } = axisWords(axis);
  const length = Math.max(0, ...columns.map(({ x }) => x.length));
  const head = columns.flatMap((column) => [
    headText(`${name} of ${column.head.replace(/ \([^)]*\)$/u, '')} (${unit})`),
    headText(column.head),
  ]);
  const rows = Array.from({ length }, (_, i) =>
    columns.flatMap(({ x, y }) => (i < x.length ? [numberText(x[i]!), numberText(y[i]!)] : ['', ''])),
  );
  return [head, ...rows];
}

function headText(text: string): string {
  return csvText(asciiText(cleanText(text)));
}

/** Empty where there is no number: NaN is not a value a reader of the file should have to know. */
function numberText(value: number): string {
  return Number.isFinite(value) ? String(value === 0 ? 0 : value) : '';
}
