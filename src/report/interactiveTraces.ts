import { type EncodedColumn, encodeColumn } from './encodeColumn.ts';
import type { AxisSpec, BarsPanel, LinesPanel, PanelSpec, StatesPanel } from './figureSpec.ts';
import { formatInstant } from './formatQuantity.ts';
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

/** The traces of one panel on its own vertical axis, over the shared horizontal axis. */
export function panelTraces(panel: PanelSpec, axis: string, x: AxisSpec, columns: ColumnStore): object[] {
  switch (panel.kind) {
    case 'lines':
      return lineTraces(panel, axis, x, columns);
    case 'states':
      return stateTraces(panel, axis, x);
    case 'bars':
      return barTraces(panel, axis);
  }
}

/** What a curve shows, where that differs from the title of the axis it is drawn on. */
const HOVER_NAMES: Partial<Record<Quantity, string>> = {
  currentA: 'Line current',
  currentB: 'Line current',
  currentC: 'Line current',
  torque: 'Air-gap torque',
  loadTorque: 'Load torque',
  couplingTorque: 'Coupling torque',
  steadyTorque: 'Steady-state torque',
};

/**
 * "Speed 1485 r/min" as a template of the plotting library (number formats of d3): three significant digits, more
 * where the axis reaches thousands, so that no whole digit is rounded away; times as everywhere in tenths of ms.
 */
function hoverLine(variable: 'x' | 'y', axis: AxisSpec, name?: string): string {
  const [, title = axis.label, unit = ''] = /^(.*) \((.*)\)$/u.exec(axis.label) ?? [];
  const largest = Math.max(1, ...axis.domain.map(Math.abs));
  const format = unit === 's' ? '.4f' : `.${Math.max(3, Math.floor(Math.log10(largest)) + 1)}r`;
  return `${escapePlotText(name ?? title)} %{${variable}:${format}} ${escapePlotText(unit)}`;
}

const DASHES = { solid: 'solid', dash: 'dash', dot: 'dot', dashdot: 'dashdot' } as const;

function lineTraces(panel: LinesPanel, axis: string, x: AxisSpec, columns: ColumnStore): object[] {
  const curves = panel.series.map((series) => ({
    type: 'scatter',
    mode: 'lines',
    name: escapePlotText(series.label),
    x: columns.add(series.x, 'f8'),
    y: columns.add(series.form === 'line' ? series.y : series.high, 'f4'),
    yaxis: axis,
    hovertemplate: `<b>${escapePlotText(series.label)}</b><br>${hoverLine('y', panel.y, HOVER_NAMES[series.quantity])}<br>${hoverLine('x', x)}<extra></extra>`,
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

/** Thickness of the bar of a state, in rows: as in the static figures a pole's is thick, that of a device thin. */
const STATE_THICKNESS = { closed: 0.62, arcing: 0.62, on: 0.26 } as const;
const FILLED = { color: token('contacts') };
const HATCHED = {
  color: token('ground'),
  pattern: { shape: '/', size: 4, fgcolor: token('contacts'), bgcolor: token('ground') },
};

/** A bar per interval, because the library answers to a bar wherever it is pointed at, but to a line at its ends alone. */
function stateTraces(panel: StatesPanel, axis: string, x: AxisSpec): object[] {
  return panel.rows.flatMap((row, i) =>
    (['arcing', 'closed', 'on'] as const).flatMap((state) => {
      const own = row.intervals.filter((interval) => interval.state === state);
      if (own.length === 0) return [];
      return [
        {
          type: 'bar',
          orientation: 'h',
          base: own.map((interval) => interval.x0),
          x: own.map((interval) => interval.x1 - interval.x0),
          y: own.map(() => i),
          yaxis: axis,
          width: STATE_THICKNESS[state],
          hovertext: own.map((interval) =>
            escapePlotText(
              `${row.label}: ${state} from ${instantOn(x, interval.x0)} to ${instantOn(x, interval.x1)}`,
            ),
          ),
          hoverinfo: 'text',
          textposition: 'none',
          // The outline keeps an interval visible that is shorter than a pixel.
          marker: {
            ...(state === 'arcing' ? HATCHED : FILLED),
            line: { color: token('contacts'), width: 1 },
          },
        },
      ];
    }),
  );
}

/** An instant as the axis counts it: in seconds, or in milliseconds after an event. */
function instantOn(x: AxisSpec, at: number): string {
  return x.label.endsWith('(ms)') ? `${at.toFixed(1).replace('-', '−')} ms` : formatInstant(at);
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
