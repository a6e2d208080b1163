import type { MetricKey } from '../measure/metric.ts';
import type { RunResult } from '../measure/result.ts';
import { type Closing, findClosings } from './closings.ts';
import { PHASES } from './contactIntervals.ts';
import { computeExtent, paddedDomain } from './envelope.ts';
import { conductingBands, timedMarks } from './eventMarks.ts';
import type { FigureSpec, LinesPanel, Series } from './figureSpec.ts';
import { formatMetric, formatMetricMultiple } from './formatMetric.ts';
import { displayUnit, formatQuantity } from './formatQuantity.ts';
import { metricLabel, worstOf } from './keyNumbers.ts';
import {
  CURRENT_COLOUR,
  CURRENT_COLUMN,
  currentPoint,
  type PointOptions,
  torquePoint,
} from './metricPoint.ts';
import { type FigureOptions, stateRows, torqueAxis } from './timeFigure.ts';
import { readTraces, type Traces } from './traces.ts';

/** The stretch after a closing that is enlarged, s: the offset of flux and current has mostly decayed by then. */
const WINDOW_AFTER = 0.05;
/** Shown before the first instant of interest, s. */
const WINDOW_BEFORE = 0.005;
/** A parting longer before the touch than this is not part of the same change-over, s. */
const LONGEST_CHANGEOVER = 0.5;
/** Enlarged closings in one report. */
const MOST_FIGURES = 4;
const MS = 1e3;

/** The first 50 ms after each closing, from the parting before it: contacts, phase currents and torque as waveforms. */
export function switchingFigures(result: RunResult, options: FigureOptions): FigureSpec[] {
  const closings = findClosings(result.trajectory).slice(0, MOST_FIGURES);
  const seen = new Set<string>();
  return closings.map((closing, index) => {
    const first = !seen.has(closing.kind);
    seen.add(closing.kind);
    return switchingFigure(result, closing, `switching-${index + 1}-${closing.kind}`, first, options);
  });
}

function switchingFigure(
  result: RunResult,
  closing: Closing,
  id: string,
  measured: boolean,
  options: FigureOptions,
): FigureSpec {
  const { trajectory } = result;
  const changeover = closing.parting !== null && closing.touch - closing.parting < LONGEST_CHANGEOVER;
  const from = changeover ? closing.parting! : closing.touch;
  const t0 = Math.max(trajectory.tStart, from - WINDOW_BEFORE);
  const t1 = Math.min(trajectory.tEnd, closing.touch + WINDOW_AFTER);
  const toAxis = (t: number) => (t - closing.touch) * MS;
  const traces = readTraces(trajectory, t0, t1, options.units);
  const axis = traces.t.map(toAxis);
  const domain: [number, number] = [toAxis(t0), toAxis(t1)];
  const metricsOf = measured && closing.kind !== 'reclose' ? closing.kind : null;
  const at: PointOptions = { units: options.units, toAxis, t0, t1 };
  return {
    id,
    title: switchingTitle(result, closing, metricsOf, at),
    note: 'Contacts: solid is closed, hatched is arcing, nothing is open. Zero of the axis: the touch that completes a circuit.',
    description: `Contacts, phase currents and air-gap torque around the closing of the ${closing.contactor} contactor at ${formatQuantity(closing.touch, 's', { system: options.units })}.`,
    x: { label: `Time after the ${closing.contactor} contactor closes (ms)`, domain },
    panels: [
      {
        kind: 'states',
        rows: stateRows(result).map((row) => ({
          label: row.label,
          intervals: row.intervals
            .filter((interval) => interval.x1 > t0 && interval.x0 < t1)
            .map((interval) => ({
              state: interval.state,
              x0: toAxis(Math.max(t0, interval.x0)),
              x1: toAxis(Math.min(t1, interval.x1)),
            })),
        })),
      },
      currentsPanel(result, traces, axis, metricsOf, at),
      torquePanel(result, traces, axis, metricsOf, at),
    ],
    marks: timedMarks(trajectory, t0, t1, 'all').map((mark) => ({ x: toAxis(mark.t), label: mark.label })),
    bands: conductingBands(trajectory, t0, t1).map((band) => ({
      ...band,
      x0: toAxis(band.x0),
      x1: toAxis(band.x1),
    })),
  };
}

type MeasuredKind = 'start' | 'plug' | null;

function torqueKey(result: RunResult, kind: MeasuredKind): MetricKey | null {
  if (kind === null) return null;
  return worstOf(result.metrics, [`${kind}MinimumTorque`, `${kind}MaximumTorque`]);
}

function switchingTitle(result: RunResult, closing: Closing, kind: MeasuredKind, at: PointOptions): string {
  const plain = `Currents and torque after the ${closing.contactor} contactor closes`;
  const key = kind === 'start' ? 'startPeakCurrent' : torqueKey(result, kind);
  if (key === null) return plain;
  const metric = result.metrics[key];
  if (metric.value === null || metric.time === undefined) return plain;
  if (metric.time < at.t0 || metric.time > at.t1) return plain;
  const value = formatMetric(metric, metricLabel(key), at.units);
  const multiple = metric.multiple === undefined ? '' : `, ${formatMetricMultiple(metric)},`;
  const after = formatQuantity(metric.time - closing.touch, 's', { system: at.units, milli: true });
  const subject = kind === 'start' ? 'Starting current peaks at' : 'Torque swings to';
  return `${subject} ${value}${multiple} ${after} after the ${closing.contactor} contactor closes`;
}

const DASH = { A: 'solid', B: 'dash', C: 'dashdot' } as const;

function currentsPanel(
  result: RunResult,
  traces: Traces,
  axis: Float64Array,
  kind: MeasuredKind,
  at: PointOptions,
): LinesPanel {
  const crest = Math.SQRT2 * result.rated.current;
  const points = currentPoint(result, kind === null ? null : `${kind}PeakCurrent`, PHASES, at);
  const series = PHASES.map(
    (phase): Series => ({
      form: 'line',
      label: `phase ${phase}`,
      quantity: CURRENT_COLOUR[phase],
      dash: DASH[phase],
      x: axis,
      y: traces[CURRENT_COLUMN[phase]],
    }),
  );
  const marked = points.map((point) => point.y);
  const extent = computeExtent(traces.iA, traces.iB, traces.iC, marked, [crest, -crest]);
  return {
    kind: 'lines',
    weight: 2.2,
    y: { label: 'Line currents (A)', domain: paddedDomain(extent, 0.1) },
    series,
    references: [
      { y: crest, label: 'rated crest' },
      { y: -crest, label: '' },
    ],
    points,
  };
}

function torquePanel(
  result: RunResult,
  traces: Traces,
  axis: Float64Array,
  kind: MeasuredKind,
  at: PointOptions,
): LinesPanel {
  const unit = displayUnit('N·m', { system: at.units });
  const rated = result.rated.torque * unit.perSi;
  const elastic = result.scenario.load.coupling !== undefined;
  const points = [
    ...torquePoint(result, torqueKey(result, kind), at),
    ...(elastic && kind !== null ? torquePoint(result, `${kind}CouplingTorque`, at, 'couplingTorque') : []),
  ];
  const marked = points.map((point) => point.y);
  return {
    kind: 'lines',
    weight: 1.6,
    y: {
      label: torqueAxis(result, at.units),
      domain: paddedDomain(
        computeExtent(traces.torque, elastic ? traces.couplingTorque : [], [rated], marked),
        0.1,
      ),
    },
    series: [
      { form: 'line', label: 'air gap', quantity: 'torque', dash: 'solid', x: axis, y: traces.torque },
      ...(elastic ? [couplingSeries(axis, traces.couplingTorque)] : []),
    ],
    references: [{ y: rated, label: 'rated' }],
    points,
  };
}

function couplingSeries(x: Float64Array, y: Float64Array): Series {
  return { form: 'line', label: 'coupling', quantity: 'couplingTorque', dash: 'dash', x, y };
}
