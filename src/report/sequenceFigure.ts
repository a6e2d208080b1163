import type { RunResult } from '../measure/result.ts';
import { computeEnvelope, computeExtent, keepExtremes, paddedDomain, pick } from './envelope.ts';
import { conductingBands } from './eventMarks.ts';
import type { FigureSpec, LinesPanel, ReferenceLine, Series } from './figureSpec.ts';
import { displayUnit, formatInstant, type UnitSystem } from './formatQuantity.ts';
import type { Quantity } from './palette.ts';
import { sequenceMarks } from './sequenceMarks.ts';
import { sequenceRows } from './sequenceRows.ts';
import { brakingEndWindow, changeoverWindow, type SequenceWindow } from './sequenceWindows.ts';
import { brakingEndTitle, changeoverTitle, rowsInWords, runTitle } from './sequenceWords.ts';
import { type FigureOptions, MOST_POINTS } from './timeFigure.ts';
import { readTraces } from './traces.ts';

/** How a sequence chart is made. */
export interface SequenceOptions extends FigureOptions {
  /** Only this stretch of the run, s. */
  readonly window?: readonly [number, number];
}

const NOTE =
  'Thin bars: what the heading says; thick: pole closed; hatched: pole arcing; no bar: off or open. Grey ground: fewer than three poles conduct. Current: r.m.s. of the three phases together.';
/** Columns of the envelopes: about one per pixel of the wide drawing. */
const COLUMNS = 900;
const MS = 1e3;

/** What hands, devices, poles and the machine do, on one time axis: every state as a row, then current, speed and thermal memory. */
export function sequenceFigure(result: RunResult, options: SequenceOptions): FigureSpec {
  const { trajectory } = result;
  const [t0, t1] = options.window ?? [trajectory.tStart, trajectory.tEnd];
  return chart(result, options, {
    id: 'sequence',
    title: runTitle(result, options.units),
    subject: 'Sequence of the run',
    detail: 'run',
    t0,
    t1,
    zero: 0,
    xLabel: 'Time (s)',
    perSecond: 1,
    thermal: true,
  });
}

/** The first change-over, enlarged to milliseconds; null where there is none, or where the run itself is hardly longer. */
export function sequenceDetailFigure(result: RunResult, options: FigureOptions): FigureSpec | null {
  const window = changeoverWindow(result.trajectory);
  if (window === null) return null;
  return enlargedChart(result, options, window, {
    id: 'sequence-changeover',
    title: changeoverTitle(result.trajectory, window, options.units),
    subject: 'Change-over',
  });
}

/** The end of braking by the zero-speed switch, enlarged to milliseconds; null where the switch ends none. */
export function sequenceBrakingEndFigure(result: RunResult, options: FigureOptions): FigureSpec | null {
  const window = brakingEndWindow(result.trajectory);
  if (window === null) return null;
  return enlargedChart(result, options, window, {
    id: 'sequence-braking-end',
    title: brakingEndTitle(window, options.units),
    subject: 'End of braking',
  });
}

/** The sequence chart of a run and its enlargements. */
export function sequenceFigures(result: RunResult, options: FigureOptions): FigureSpec[] {
  return [
    sequenceFigure(result, options),
    sequenceDetailFigure(result, options),
    sequenceBrakingEndFigure(result, options),
  ].filter((spec) => spec !== null);
}

interface Enlargement {
  readonly id: string;
  readonly title: string;
  readonly subject: string;
}

function enlargedChart(
  result: RunResult,
  options: FigureOptions,
  window: SequenceWindow,
  names: Enlargement,
): FigureSpec {
  const { t0, t1, from } = window;
  const tripped = result.trajectory.events.some(
    (event) => event.kind === 'overloadTrips' && event.t >= t0 && event.t <= t1,
  );
  return chart(result, options, {
    ...names,
    detail: 'changeover',
    t0,
    t1,
    zero: from,
    xLabel: `Time after ${formatInstant(from)} (ms)`,
    perSecond: MS,
    thermal: tripped,
  });
}

interface Chart {
  readonly id: string;
  readonly title: string;
  readonly subject: string;
  readonly detail: 'run' | 'changeover';
  readonly t0: number;
  readonly t1: number;
  /** Instant at zero of the axis, s. */
  readonly zero: number;
  readonly xLabel: string;
  readonly perSecond: number;
  /** Whether the thermal memory moves enough to be drawn. */
  readonly thermal: boolean;
}

function chart(result: RunResult, options: FigureOptions, what: Chart): FigureSpec {
  const { trajectory } = result;
  const { units } = options;
  const { t0, t1, zero, perSecond } = what;
  const toAxis = (t: number) => (t - zero) * perSecond;
  const traces = readTraces(trajectory, t0, t1, units);
  const draw = (label: string, quantity: Quantity, y: Float64Array): Series =>
    options.waveforms === true
      ? lineSeries(label, quantity, traces.t.map(toAxis), y)
      : { form: 'envelope', label, quantity, ...computeEnvelope(traces.t.map(toAxis), y, COLUMNS) };
  const rows = sequenceRows(trajectory, t0, t1);
  const place = <T extends { readonly x0: number; readonly x1: number }>(stretch: T): T => ({
    ...stretch,
    x0: toAxis(stretch.x0),
    x1: toAxis(stretch.x1),
  });
  return {
    id: what.id,
    title: what.title,
    note: NOTE,
    description: `${what.subject}, from ${formatInstant(t0)} to ${formatInstant(t1)}. ${rowsInWords(rows)}`,
    x: { label: what.xLabel, domain: [toAxis(t0), toAxis(t1)] },
    panels: [
      {
        kind: 'states',
        rows: rows.map((row) => ({ ...row, intervals: row.intervals.map(place) })),
      },
      currentPanel(result, rmsOfPhases(traces.iA, traces.iB, traces.iC), draw),
      speedPanel(result, traces.speed, units, draw),
      ...(what.thermal ? thermalPanel(result, toAxis) : []),
    ],
    marks: sequenceMarks(trajectory, { t0, t1, units, detail: what.detail }).map((mark) => ({
      x: toAxis(mark.t),
      label: mark.label,
    })),
    bands: conductingBands(trajectory, t0, t1).map(place),
  };
}

type Draw = (label: string, quantity: Quantity, y: Float64Array) => Series;

function thermalPanel({ trajectory }: RunResult, toAxis: (t: number) => number): LinesPanel[] {
  const { thermal } = trajectory;
  if (thermal === null) return [];
  const y = Float64Array.from(thermal.value);
  return [
    {
      kind: 'lines',
      weight: 0.8,
      y: {
        label: 'Thermal memory (share of trip)',
        domain: paddedDomain(computeExtent(y, [1])),
      },
      series: [lineSeries('hottest phase', 'heat', Float64Array.from(thermal.t, toAxis), y)],
      references: [{ y: 1, label: 'trips' }],
      points: [],
    },
  ];
}

function speedPanel(result: RunResult, speed: Float64Array, units: UnitSystem, draw: Draw): LinesPanel {
  const unit = displayUnit('rad/s', { system: units });
  return {
    kind: 'lines',
    weight: 1,
    y: { label: `Speed (${unit.label})`, domain: paddedDomain(computeExtent(speed)) },
    series: [draw('shaft', 'speed', speed)],
    references: switchSpeeds(result).map((line) => ({ ...line, y: line.y * unit.perSi })),
    points: [],
  };
}

/** Speeds at which the zero-speed switch drops out, in the directions in which it was ever actuated, rad/s; named once. */
function switchSpeeds({ scenario, trajectory }: RunResult): ReferenceLine[] {
  const data = scenario.starter.zeroSpeedSwitch;
  if (data === null) return [];
  const actuated = (device: string) =>
    trajectory.channels.some(
      ({ of, changes }) =>
        of.kind === 'device' && of.device === device && changes.some(({ value }) => value === 'on'),
    );
  const speeds = [
    ...(actuated('switchForward') ? [data.dropOutSpeed] : []),
    ...(actuated('switchReverse') ? [-(data.reverse ?? data).dropOutSpeed] : []),
  ];
  return speeds.map((y, i) => ({ y, label: i === 0 ? 'switch opens' : '' }));
}

function currentPanel(result: RunResult, current: Float64Array, draw: Draw): LinesPanel {
  const rated = result.rated.current;
  return {
    kind: 'lines',
    weight: 1,
    y: { label: 'Line current, r.m.s. (A)', domain: paddedDomain(computeExtent(current, [rated])) },
    series: [draw('motor', 'currentA', current)],
    references: [{ y: rated, label: 'rated' }],
    points: [],
  };
}

/** √((i_A² + i_B² + i_C²)/3): of three balanced sinusoidal currents the r.m.s. value of each, at every instant; A. */
function rmsOfPhases(iA: Float64Array, iB: Float64Array, iC: Float64Array): Float64Array {
  return iA.map((a, i) => Math.sqrt((a * a + iB[i]! ** 2 + iC[i]! ** 2) / 3));
}

function lineSeries(label: string, quantity: Quantity, x: Float64Array, y: Float64Array): Series {
  const kept = keepExtremes(y, MOST_POINTS);
  return { form: 'line', label, quantity, dash: 'solid', x: pick(x, kept), y: pick(y, kept) };
}
