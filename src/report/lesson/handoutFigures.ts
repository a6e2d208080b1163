import { computeEnvelope, computeExtent, paddedDomain } from '../envelope.ts';
import type { FigureSpec, LinesPanel, PanelSpec, Series } from '../figureSpec.ts';
import type { RunView } from '../live/runView.ts';
import { sketchAxis } from './sketchAxis.ts';

/** Name of the figure around the closing. */
const ENLARGED = 'enlarged';
/** Columns of a band in print: about one per pixel of the drawing. */
const COLUMNS = 900;
/** What the panels of three currents become in print, share of the height of one panel. */
const CURRENT_WEIGHT = 0.8;
/** Shown before and after the instant of interest, s. */
const BEFORE = 0.015;
const AFTER = 0.05;
/** ms in one s. */
const MS = 1e3;
/** Room above and below the curves of an enlarged panel, share. */
const MARGIN = 0.1;

/**
 * The figure over the whole run as it prints: an oscillation that would blacken the paper as a curve becomes the band between its
 * smallest and largest values, and each of several currents has a panel of its own.
 */
export function printedFigure(spec: FigureSpec): FigureSpec {
  return { ...spec, panels: spec.panels.flatMap(printedPanels) };
}

function printedPanels(panel: PanelSpec): PanelSpec[] {
  if (panel.kind !== 'lines') return [panel];
  const currents = panel.series.filter(({ quantity }) => /^current[ABC]$/u.test(quantity));
  if (currents.length < 2) return [{ ...panel, series: panel.series.map(printedSeries) }];
  return currents.map((series) => ({
    ...panel,
    weight: CURRENT_WEIGHT,
    y: {
      ...panel.y,
      label: panel.y.label.replace('Line currents', `Line current ${series.quantity.slice(-1)}`),
    },
    series: [printedSeries({ ...series, label: series.quantity.slice(-1) })],
    points: panel.points.filter(({ quantity }) => quantity === series.quantity),
  }));
}

function printedSeries(series: Series): Series {
  if (series.form === 'envelope' || series.x.length <= 2 * COLUMNS) return series;
  const { label, quantity, x, y } = series;
  return { form: 'envelope', label, quantity, ...computeEnvelope(x, y, COLUMNS) };
}

/**
 * The first 50 ms after the closing that matters most, with what leads to it, cut out of the figure over the whole run: contacts,
 * currents and torque over milliseconds. Null where the run has no curves there.
 */
export function enlargedFigure(view: Pick<RunView, 'time' | 'focus'>): FigureSpec | null {
  const { time } = view;
  const focus = closingOf(view);
  const x0 = Math.max(time.x.domain[0], focus - BEFORE);
  const x1 = Math.min(time.x.domain[1], focus + AFTER);
  const toAxis = (t: number) => (t - focus) * MS;
  const inside = (x: number) => x >= x0 && x <= x1;
  const panels = time.panels.flatMap((panel): PanelSpec[] => {
    if (panel.kind === 'lines')
      return /current|torque/iu.test(panel.y.label) ? [cutPanel(panel, x0, x1, toAxis)] : [];
    if (panel.kind === 'bars') return [];
    const rows = panel.rows.map((row) => ({
      ...row,
      intervals: row.intervals
        .filter((interval) => interval.x1 > x0 && interval.x0 < x1)
        .map(({ state, ...ends }) => ({
          state,
          x0: toAxis(Math.max(x0, ends.x0)),
          x1: toAxis(Math.min(x1, ends.x1)),
        })),
    }));
    return [{ ...panel, rows }];
  });
  if (x1 <= x0 || !panels.some((panel) => panel.kind === 'lines')) return null;
  return {
    ...time,
    id: ENLARGED,
    title: `From ${Math.round(-toAxis(x0))} ms before to ${Math.round(toAxis(x1))} ms after the contactor closes`,
    note: '',
    description: 'Contacts, phase currents and air-gap torque around the closing of the contactor.',
    x: { label: 'Time after the contactor closes (ms)', domain: [toAxis(x0), toAxis(x1)] },
    panels,
    marks: time.marks.filter(({ x }) => inside(x)).map((mark) => ({ ...mark, x: toAxis(mark.x) })),
    bands: time.bands
      .filter((band) => band.x1 > x0 && band.x0 < x1)
      .map((band) => ({ ...band, x0: toAxis(Math.max(x0, band.x0)), x1: toAxis(Math.min(x1, band.x1)) })),
  };
}

/** The closing that plugs, else the first start, by the words of their marks; else where the page would look first, s. */
function closingOf({ time, focus }: Pick<RunView, 'time' | 'focus'>): number {
  const closing =
    time.marks.find(({ label }) => label.startsWith('plug: ')) ??
    time.marks.find(({ label }) => label.startsWith('start: '));
  return closing?.x ?? focus;
}

function cutPanel(panel: LinesPanel, x0: number, x1: number, toAxis: (t: number) => number): LinesPanel {
  const series = panel.series.flatMap((one): Series[] => {
    if (one.form !== 'line') return [];
    const kept = [...one.x.keys()].filter((i) => one.x[i]! >= x0 && one.x[i]! <= x1);
    return [
      {
        ...one,
        x: Float64Array.from(kept, (i) => toAxis(one.x[i]!)),
        y: Float64Array.from(kept, (i) => one.y[i]!),
      },
    ];
  });
  const points = panel.points
    .filter(({ x }) => x >= x0 && x <= x1)
    .map((point) => ({ ...point, x: toAxis(point.x) }));
  const extent = computeExtent(
    ...series.flatMap((one) => (one.form === 'line' ? [one.y] : [])),
    points.map(({ y }) => y),
    panel.references.map(({ y }) => y),
  );
  return { ...panel, y: { ...panel.y, domain: paddedDomain(extent, MARGIN) }, series, points };
}

/**
 * The axes of a figure with nothing drawn in them, to sketch on: same panels and names, rated values as given; no curve, no interval, no
 * mark, a title that tells no result, and ranges that do not tell one either.
 */
export function emptyAxes(spec: FigureSpec, title: string): FigureSpec {
  return {
    ...spec,
    id: `${spec.id}-empty`,
    title,
    note: '',
    description: `Empty axes: ${spec.x.label}; ${spec.panels.map((panel) => (panel.kind === 'lines' ? panel.y.label : 'contacts')).join(', ')}.`,
    // The stretch around a closing is as long in every run, unless a run ends in it.
    x: spec.id === ENLARGED ? { ...spec.x, domain: [-BEFORE * MS, AFTER * MS] } : sketchAxis(spec.x),
    panels: spec.panels.map((panel): PanelSpec => {
      switch (panel.kind) {
        case 'lines':
          return { ...panel, y: sketchAxis(panel.y), series: [], points: [] };
        case 'states':
          return { ...panel, rows: panel.rows.map((row) => ({ ...row, intervals: [] })) };
        case 'bars':
          return { ...panel, rows: [] };
        default:
          return panel satisfies never;
      }
    }),
    marks: [],
    bands: [],
  };
}
