import type { RunResult } from '../measure/result.ts';
import { findPlugging } from './closings.ts';
import {
  bypassIntervals,
  joinIntervals,
  PHASES,
  poleIntervals,
  supplyIntervals,
  switchIntervals,
} from './contactIntervals.ts';
import { computeEnvelope, computeExtent, keepExtremes, paddedDomain, pick } from './envelope.ts';
import { conductingBands, timedMarks } from './eventMarks.ts';
import type { FigureSpec, LinesPanel, Series, StateRow } from './figureSpec.ts';
import { finding, motionSentence, stays } from './findings.ts';
import { displayUnit, formatInstant, formatQuantity, type UnitSystem } from './formatQuantity.ts';
import { peakCurrentKey, worstCouplingKey, worstTorqueKey } from './keyNumbers.ts';
import {
  CURRENT_COLOUR,
  CURRENT_COLUMN,
  currentPoint,
  type PointOptions,
  torquePoint,
} from './metricPoint.ts';
import type { Quantity } from './palette.ts';
import { readTraces, type SampleDensity, type Traces } from './traces.ts';

/** How a figure over time is made. */
export interface FigureOptions {
  readonly units: UnitSystem;
  /** Draw curves instead of bands, and the phase currents in one panel: for plots that can be enlarged. */
  readonly waveforms?: boolean;
  /** Of the curves; that of printed figures where it is left out. */
  readonly density?: SampleDensity;
}

/** Columns of the envelopes: about one per pixel of the wide drawing. */
const COLUMNS = 900;
/** Points of one curve in a plot that can be enlarged: keeps a report of a long run below a few megabytes. */
export const MOST_POINTS = 16_000;

type Draw = (label: string, quantity: Quantity, t: Float64Array, y: Float64Array) => Series;

/**
 * The whole run on one time axis: what the contacts do above, then phase currents, torque, speed and terminal
 * voltage. Oscillations at supply frequency appear as the band between their smallest and largest values.
 */
export function timeFigure(result: RunResult, options: FigureOptions): FigureSpec {
  const { trajectory } = result;
  const { tStart, tEnd } = trajectory;
  const traces = readTraces(trajectory, tStart, tEnd, options.units, options.density);
  const draw = options.waveforms === true ? lineSeries : envelopeSeries;
  const at: PointOptions = { units: options.units, toAxis: (t) => t, t0: tStart, t1: tEnd };
  return {
    id: 'time',
    title: timeTitle(result, options),
    note: 'Contacts: solid is closed, hatched is arcing, nothing is open. Currents, torque and voltage: the filled band spans all values the curve takes there. Grey ground: fewer than three poles conduct.',
    description: `Contacts, phase currents, air-gap torque, speed and terminal voltage against time. ${finding(result, options.units)}`,
    x: { label: 'Time (s)', domain: [tStart, tEnd] },
    panels: [
      { kind: 'states', rows: stateRows(result) },
      ...(options.waveforms === true
        ? [currentsPanel(result, traces, at)]
        : currentPanels(result, traces, at)),
      torquePanel(result, traces, at, draw),
      speedPanel(result, traces, options, draw),
      voltagePanel(result, traces, draw),
    ],
    marks: timedMarks(trajectory, tStart, tEnd, 'usual').map((mark) => ({ x: mark.t, label: mark.label })),
    bands: conductingBands(trajectory, tStart, tEnd),
  };
}

/** A row per contactor, torque and speed: the time figure short enough for a first page. */
export function overviewFigure(result: RunResult, options: FigureOptions): FigureSpec {
  const full = timeFigure(result, options);
  const { trajectory } = result;
  const kept = full.panels.filter((panel) => panel.kind === 'lines' && /torque|speed/iu.test(panel.y.label));
  const marks = timedMarks(trajectory, trajectory.tStart, trajectory.tEnd, 'few');
  return {
    ...full,
    id: 'overview',
    note: '',
    panels: [{ kind: 'states', rows: contactorRows(result) }, ...kept],
    marks: marks.map((mark) => ({ x: mark.t, label: mark.label })),
  };
}

/** A row per contactor: closed from the first touch to the last parting, arcing until the last pole has cleared. */
function contactorRows(result: RunResult): StateRow[] {
  const rows = (['forward', 'reverse'] as const).map((contactor): StateRow => {
    const all = PHASES.flatMap((phase) => poleIntervals(result.trajectory, contactor, phase));
    const closed = joinIntervals(all.filter((interval) => interval.state === 'closed'));
    const arcing = joinIntervals(all.filter((interval) => interval.state === 'arcing'));
    return { label: contactor, intervals: [...arcing, ...closed] };
  });
  return rows.filter((row) => row.intervals.length > 0);
}

/**
 * Rows of the contacts: a supply phase that is lost, every pole of each contactor that ever closed, the bypass of the line
 * resistors and the zero-speed switch where there are any.
 */
export function stateRows(result: RunResult): StateRow[] {
  const { trajectory, scenario } = result;
  const lost = PHASES.filter((phase) =>
    trajectory.events.some((event) => event.kind === 'phaseLost' && event.phase === phase),
  );
  const rows: StateRow[] = lost.map((phase) => ({
    label: `supply ${phase}`,
    intervals: supplyIntervals(trajectory, phase),
  }));
  for (const contactor of ['forward', 'reverse'] as const) {
    const poles = PHASES.map((phase) => ({
      label: `${contactor} ${phase}`,
      intervals: poleIntervals(trajectory, contactor, phase),
    }));
    if (poles.some((row) => row.intervals.length > 0)) rows.push(...poles);
  }
  if (scenario.starter.lineResistors !== undefined) {
    rows.push({ label: 'bypass', intervals: bypassIntervals(trajectory) });
  }
  if (scenario.starter.zeroSpeedSwitch !== null) {
    rows.push({ label: 'speed switch', intervals: switchIntervals(trajectory) });
  }
  return rows;
}

function timeTitle(result: RunResult, options: FigureOptions): string {
  const plugging = findPlugging(result.trajectory);
  const stop = result.metrics.stopTimeFromParting.value;
  if (plugging?.parting == null || stop === null)
    return motionSentence(result, options.units).replace(/\.$/u, '');
  const show = { system: options.units };
  const start = result.metrics.startTime.value;
  const runUp = start === null ? '' : `Up to speed in ${formatQuantity(start, 's', show)}; `;
  const text = `${runUp}contacts part at ${formatInstant(plugging.parting)}, ${stays(result) ? 'at rest' : 'through zero speed'} ${formatQuantity(stop, 's', show)} later`;
  return `${text[0]?.toUpperCase()}${text.slice(1)}`;
}

function currentPanels(result: RunResult, traces: Traces, at: PointOptions): LinesPanel[] {
  const crest = Math.SQRT2 * result.rated.current;
  const key = peakCurrentKey(result.metrics);
  const marked = currentPoint(result, key, PHASES, at).map((point) => point.y);
  const size = Math.max(...computeExtent(traces.iA, traces.iB, traces.iC, marked, [crest]).map(Math.abs));
  return PHASES.map((phase) => ({
    kind: 'lines',
    weight: 0.8,
    y: { label: `Line current ${phase} (A)`, domain: [-1.12 * size, 1.12 * size] },
    series: [envelopeSeries(phase, CURRENT_COLOUR[phase], traces.t, traces[CURRENT_COLUMN[phase]])],
    references: [
      { y: crest, label: 'rated crest' },
      { y: -crest, label: '' },
    ],
    points: currentPoint(result, key, [phase], at),
  }));
}

function torquePanel(result: RunResult, traces: Traces, at: PointOptions, draw: Draw): LinesPanel {
  const unit = displayUnit('N·m', { system: at.units });
  const rated = result.rated.torque * unit.perSi;
  const elastic = result.scenario.load.coupling !== undefined;
  const points = [
    ...torquePoint(result, worstTorqueKey(result.metrics), at),
    ...(elastic ? torquePoint(result, worstCouplingKey(result.metrics), at, 'couplingTorque') : []),
  ];
  // Behind an elastic coupling what acts on the motor is the coupling's torque, not the load's.
  const hasLoad = result.scenario.load.torques.length > 0 && !elastic;
  const marked = points.map((point) => point.y);
  return {
    kind: 'lines',
    weight: 1.3,
    y: {
      label: torqueAxis(result, at.units),
      domain: paddedDomain(
        computeExtent(traces.torque, elastic ? traces.couplingTorque : traces.loadTorque, [rated], marked),
      ),
    },
    series: [
      ...(hasLoad ? [draw('load', 'loadTorque', traces.t, traces.loadTorque)] : []),
      draw('air gap', 'torque', traces.t, traces.torque),
      ...(elastic ? [draw('coupling', 'couplingTorque', traces.t, traces.couplingTorque)] : []),
    ],
    references: [{ y: rated, label: 'rated' }],
    points,
  };
}

/** Name of the axis of a panel of torques: with an elastic coupling there are two of them. */
export function torqueAxis({ scenario }: RunResult, units: UnitSystem): string {
  const name = scenario.load.coupling === undefined ? 'Air-gap torque' : 'Torque';
  return `${name} (${displayUnit('N·m', { system: units }).label})`;
}

function speedPanel(result: RunResult, traces: Traces, options: FigureOptions, draw: Draw): LinesPanel {
  const unit = displayUnit('rad/s', { system: options.units });
  const { speed } = result.rated;
  return {
    kind: 'lines',
    weight: 1,
    y: { label: `Speed (${unit.label})`, domain: paddedDomain(computeExtent(traces.speed)) },
    series: [
      draw(
        result.scenario.load.coupling === undefined ? 'shaft' : 'motor shaft',
        'speed',
        traces.t,
        traces.speed,
      ),
    ],
    references: speed === null ? [] : [{ y: speed * unit.perSi, label: 'rated' }],
    points: [],
  };
}

function voltagePanel(result: RunResult, traces: Traces, draw: Draw): LinesPanel {
  const supply = result.scenario.supply.lineVoltage;
  return {
    kind: 'lines',
    weight: 0.8,
    y: {
      label: 'Terminal voltage, line r.m.s. (V)',
      domain: paddedDomain(computeExtent(traces.voltage, [supply])),
    },
    series: [draw('motor', 'voltage', traces.t, traces.voltage)],
    references: [{ y: supply, label: 'supply' }],
    points: [],
  };
}

function envelopeSeries(label: string, quantity: Quantity, t: Float64Array, y: Float64Array): Series {
  return { form: 'envelope', label, quantity, ...computeEnvelope(t, y, COLUMNS) };
}

function lineSeries(label: string, quantity: Quantity, t: Float64Array, y: Float64Array): Series {
  const kept = keepExtremes(y, MOST_POINTS);
  return {
    form: 'line',
    label,
    quantity,
    dash: quantity === 'loadTorque' ? 'dash' : 'solid',
    x: pick(t, kept),
    y: pick(y, kept),
  };
}

/** The phase currents as three curves in one panel. */
function currentsPanel(result: RunResult, traces: Traces, at: PointOptions): LinesPanel {
  const [first, ...others] = currentPanels(result, traces, at);
  return {
    ...first!,
    weight: 2,
    y: { ...first!.y, label: 'Line currents (A)' },
    series: PHASES.map((phase) =>
      lineSeries(`phase ${phase}`, CURRENT_COLOUR[phase], traces.t, traces[CURRENT_COLUMN[phase]]),
    ),
    points: [first!, ...others].flatMap((panel) => panel.points),
  };
}
