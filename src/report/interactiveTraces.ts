import { type EncodedColumn, encodeColumn } from './encodeColumn.ts';
import type { BarsPanel, LinesPanel, PanelSpec, StatesPanel } from './figureSpec.ts';
import type { Quantity, SurfaceColour } from './palette.ts';
import { escapePlotText } from './plainText.ts';

/** Stands for a colour until the page knows its theme; only values of keys that end in "color" are looked up. */
export type ColourToken = `colour:${Quantity | SurfaceColour}`;

/** The token of a colour. */
export function token(name: Quantity | SurfaceColour): ColourToken {
  return `colour:${name}`;
}

/** The columns of a figure, each stored once however many traces name it. */
export interface ColumnStore {
  readonly encoded: EncodedColumn[];
  /** Index of a column; the same array is stored once. */
  readonly add: (values: Float64Array, dtype: 'f4' | 'f8') => { readonly column: number };
}

/** An empty store. */
export function columnStore(): ColumnStore {
  const encoded: EncodedColumn[] = [];
  const known = new Map<Float64Array, number>();
  const add: ColumnStore['add'] = (values, dtype) => {
    const index = known.get(values) ?? encoded.push(encodeColumn(values, dtype)) - 1;
    known.set(values, index);
    return { column: index };
  };
  return { encoded, add };
}

/** The traces of one panel on its own vertical axis. */
export function panelTraces(panel: PanelSpec, axis: string, columns: ColumnStore): object[] {
  switch (panel.kind) {
    case 'lines':
      return lineTraces(panel, axis, columns);
    case 'states':
      return stateTraces(panel, axis);
    case 'bars':
      return barTraces(panel, axis);
  }
}

const DASHES = { solid: 'solid', dash: 'dash', dot: 'dot', dashdot: 'dashdot' } as const;

function lineTraces(panel: LinesPanel, axis: string, columns: ColumnStore): object[] {
  const curves = panel.series.map((series) => ({
    type: 'scatter',
    mode: 'lines',
    name: escapePlotText(series.label),
    x: columns.add(series.x, 'f8'),
    y: columns.add(series.form === 'line' ? series.y : series.high, 'f4'),
    yaxis: axis,
    line: {
      color: token(series.quantity),
      width: 1.4,
      dash: series.form === 'line' ? DASHES[series.dash] : 'solid',
    },
  }));
  const references = panel.references.map((reference) => ({
    type: 'scatter',
    mode: 'lines',
    x: { range: true },
    y: [reference.y, reference.y],
    yaxis: axis,
    hoverinfo: 'skip',
    line: { color: token('muted'), width: 1, dash: 'dot' },
  }));
  const points = panel.points.map((point) => ({
    type: 'scatter',
    mode: 'markers',
    x: [point.x],
    y: [point.y],
    yaxis: axis,
    text: [escapePlotText(point.label)],
    hoverinfo: 'text',
    marker: { size: 8, symbol: 'circle-open', color: token(point.quantity), line: { width: 2 } },
  }));
  return [...references, ...curves, ...points];
}

function stateTraces(panel: StatesPanel, axis: string): object[] {
  return panel.rows.flatMap((row, i) =>
    row.intervals.map((interval) => ({
      type: 'scatter',
      mode: 'lines',
      x: [interval.x0, interval.x1],
      y: [i, i],
      yaxis: axis,
      text: escapePlotText(`${row.label}: ${interval.state}`),
      hoverinfo: 'text+x',
      line:
        interval.state === 'closed'
          ? { color: token('contacts'), width: 9 }
          : { color: token('contacts'), width: 9, dash: '2px,2px' },
    })),
  );
}

function barTraces(panel: BarsPanel, axis: string): object[] {
  return [
    {
      type: 'bar',
      orientation: 'h',
      x: panel.rows.map((row) => row.value),
      y: panel.rows.map((_, i) => i),
      yaxis: axis,
      text: panel.rows.map((row) => escapePlotText(row.text)),
      textposition: 'outside',
      cliponaxis: false,
      hoverinfo: 'text',
      width: 0.55,
      marker: { colors: true, color: panel.rows.map((row) => token(row.quantity)) },
    },
  ];
}
