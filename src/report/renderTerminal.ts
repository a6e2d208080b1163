import type { MetricKey } from '../measure/metric.ts';
import type { RunResult } from '../measure/result.ts';
import { asciiText } from './asciiText.ts';
import { CAUTIONS } from './cautions.ts';
import { displayWidth, padToWidth, wrapToWidth } from './displayWidth.ts';
import { isReported } from './elements.ts';
import { computeExtent } from './envelope.ts';
import { estimationLines } from './estimationText.ts';
import { timedMarks } from './eventMarks.ts';
import { finding } from './findings.ts';
import { formatMetric, formatMetricMultiple } from './formatMetric.ts';
import {
  displayUnit,
  formatInstant,
  formatNumber,
  formatQuantity,
  type UnitSystem,
} from './formatQuantity.ts';
import { keyNumbers, metricLabel, TORQUES } from './keyNumbers.ts';
import { cleanText } from './plainText.ts';
import { RATED_WORDS } from './ratedWords.ts';
import type { ReportBackground } from './reportBackground.ts';
import { statusLine } from './statusLine.ts';
import { rowLines, type TerminalRow } from './terminalRows.ts';
import { textTrace } from './textTrace.ts';
import { readTraces } from './traces.ts';

/** How the terminal summary is written. */
export interface TerminalOptions extends ReportBackground {
  readonly units: UnitSystem;
  /** Columns no line exceeds; 80 by default. */
  readonly width?: number;
  /** Bold and colour by escape sequences. */
  readonly colour: boolean;
  /** The trace in plain ASCII, for terminals without braille characters. */
  readonly ascii?: boolean;
}

const TRACE_ROWS = 9;
/** Columns left of the trace for its scale. */
const SCALE_WIDTH = 8;
const LABEL_WIDTH = 30;
const VALUE_WIDTH = 13;
const KEY_LABEL_WIDTH = 14;
const KEY_VALUE_WIDTH = 16;

/** Metrics of the table, with what tells them apart from their namesakes. */
const ROWS: readonly (readonly [MetricKey, string])[] = [
  ['startPeakCurrent', 'Start: highest phase current'],
  ['startMaximumTorque', 'Start: highest torque'],
  ['startCouplingTorque', 'Start: coupling torque'],
  ['startVoltageDip', 'Start: deepest voltage dip'],
  ['startTime', 'Start: run-up time'],
  ['partingToTouch', 'Dead time, parting to touch'],
  ['extinctionToTouch', 'Dead time, without current'],
  ['arcMargin', 'Margin, last arc to touch'],
  ['residualVoltage', 'Residual voltage at touch'],
  ['plugPeakCurrent', 'Plug: highest phase current'],
  ['plugMinimumTorque', 'Plug: most negative torque'],
  ['plugMaximumTorque', 'Plug: most positive torque'],
  ['plugCouplingTorque', 'Plug: coupling torque'],
  ['plugVoltageDip', 'Plug: deepest voltage dip'],
  ['stopTimeFromTouch', 'Reverse closing to zero speed'],
  ['stopRevolutions', 'Revolutions to stop'],
  ['plugRotorHeat', 'Plug: rotor heat'],
  ['plugStatorHeat', 'Plug: stator heat'],
  ['plugLineResistorHeat', 'Plug: heat of line resistors'],
  ['plugRotorResistorHeat', 'Plug: heat at the slip rings'],
  ['creepRevolutions', 'Creep in reverse'],
  ['switchOpeningTime', 'Reverse closing to switch'],
  ['reversalTime', 'Full reversal time'],
  ['reversalRotorHeat', 'Full reversal: rotor heat'],
  ['lowestTerminalVoltage', 'Lowest terminal voltage'],
  ['torsionalFrequency', 'Torsional natural frequency'],
  ['ledgerResidual', 'Energy ledger residual'],
];

/**
 * The summary for a terminal: title, finding, table, torque trace, cautions, warnings, and at the end the four numbers
 * that matter most. No line is wider than `width` columns, whatever the title.
 */
export function renderTerminal(result: RunResult, options: TerminalOptions): string {
  const width = options.width ?? 80;
  const paint = painter(options.colour);
  const wrap = (text: string, indent = '') =>
    wrapToWidth(text, width - displayWidth(indent)).map((line) => indent + line);
  const failed = !result.usable;
  const lines = [
    ...(failed ? wrap(`! ${statusLine(result)}`).map(paint.alarm) : []),
    ...wrap(cleanText(result.scenario.title)).map(paint.strong),
    ...wrap(finding(result, options.units)),
    ...wrap(ratedLine(result, options.units)),
    ...backgroundLines(options).flatMap((line) => wrap(cleanText(line))),
    '',
    ...tableLines(result, options, width),
    '',
    ...traceLines(result, options, width),
    '',
    ...result.warnings.flatMap((warning) => wrap(`Note: ${cleanText(warning)}`)),
    ...wrap(`Caution: ${CAUTIONS.join(' ')}`),
    '',
    ...rowLines(
      keyNumbers(result, options.units, options.bands).map(({ label, value, range, detail }) => ({
        label,
        value: written(range === undefined ? value : `${value} ${range}`, options),
        note: detail,
      })),
      KEY_LABEL_WIDTH,
      KEY_VALUE_WIDTH,
      width,
    ).map((line) => `${paint.strong(line.head)}${line.note}`.trimEnd()),
  ];
  const text = `${lines.join('\n')}\n`;
  return options.ascii === true ? asciiText(text) : text;
}

/** A value as it will stand in the terminal, so that the columns fit it: ASCII is longer here and there. */
function written(value: string, { ascii }: TerminalOptions): string {
  return ascii === true ? asciiText(value) : value;
}

/** How the circuit was found, and what the ranges of the numbers mean. */
function backgroundLines({ estimation, bands, units }: TerminalOptions): string[] {
  return [
    ...(estimation == null ? [] : estimationLines(estimation, units)),
    ...(bands == null
      ? []
      : [`In brackets: the range over ${bands.members} circuits that the data allow. ${bands.sentence}`]),
  ];
}

/** The base of all multiples. */
function ratedLine({ rated }: RunResult, units: UnitSystem): string {
  const show = (value: number, unit: string) => formatQuantity(value, unit, { system: units });
  return (
    `Rated here: ${show(rated.current, 'A')} r.m.s. (crest ${show(Math.SQRT2 * rated.current, 'A')}, ` +
    `${RATED_WORDS[rated.currentOrigin]}), ${show(rated.torque, 'N·m')} (${RATED_WORDS[rated.torqueOrigin]}).`
  );
}

function tableLines(result: RunResult, options: TerminalOptions, width: number): string[] {
  const shown = ROWS.filter(([key]) => result.metrics[key].value !== null && isReported(result, key));
  const rows = shown.map(([key, label]): TerminalRow => {
    const metric = result.metrics[key];
    const notes = [
      formatMetricMultiple(metric),
      metric.phase === undefined ? '' : `phase ${metric.phase}`,
      metric.time === undefined ? '' : `at ${formatInstant(metric.time)}`,
    ];
    const value = formatMetric(metric, metricLabel(key), options.units);
    return { label, value, note: notes.filter((note) => note !== '').join(', ') };
  });
  return rowLines(rows, LABEL_WIDTH, VALUE_WIDTH, width).map((line) => (line.head + line.note).trimEnd());
}

function traceLines(result: RunResult, options: TerminalOptions, width: number): string[] {
  const { trajectory } = result;
  const { tStart, tEnd } = trajectory;
  const traces = readTraces(trajectory, tStart, tEnd, options.units);
  const unit = displayUnit('N·m', { system: options.units });
  // The exact extremes lie between samples: with them the scale agrees with the table.
  const exact = TORQUES.map((key) => (result.metrics[key].value ?? 0) * unit.perSi);
  const [low, high] = computeExtent(traces.torque, [0], exact);
  const columns = width - SCALE_WIDTH - 1;
  const drawn = textTrace(traces.t, traces.torque, [low, high], {
    columns,
    rows: TRACE_ROWS,
    ascii: options.ascii === true,
  });
  const scale = (row: number) => {
    if (row === 0) return formatNumber(Math.round(high));
    if (row === TRACE_ROWS - 1) return formatNumber(Math.round(low));
    return row === drawn.zeroLine ? '0' : '';
  };
  return [
    `Air-gap torque (${unit.label}) against time, ${formatNumber(tEnd - tStart)} s across`,
    ...drawn.lines.map((line, row) => `${padToWidth(scale(row), -SCALE_WIDTH)} ${line}`.trimEnd()),
    ...markLines(result, columns, width),
  ];
}

/** Words under the trace, each starting below its instant; words that would overlap go to the next line. */
function markLines(result: RunResult, columns: number, width: number): string[] {
  const { tStart, tEnd } = result.trajectory;
  const lines: string[] = [];
  for (const mark of timedMarks(result.trajectory, tStart, tEnd, 'usual')) {
    const text = `^ ${mark.label}`;
    const wanted = SCALE_WIDTH + 1 + Math.floor(((mark.t - tStart) / (tEnd - tStart || 1)) * (columns - 1));
    const fits = wanted + displayWidth(text) <= width;
    // Near the right edge the words stand left of their instant.
    const placed = fits ? text : `${mark.label} ^`;
    const start = fits ? wanted : Math.max(0, wanted + 1 - displayWidth(placed));
    const free = lines.findIndex((line) => displayWidth(line) < start);
    const index = free === -1 ? lines.length : free;
    lines[index] = padToWidth(lines[index] ?? '', start) + placed;
  }
  return lines;
}

interface Painter {
  readonly strong: (text: string) => string;
  readonly alarm: (text: string) => string;
}

/** SGR escape sequences of ECMA-48: bold, and bold red. */
function painter(colour: boolean): Painter {
  const wrapIn = (code: string) => (text: string) => (colour ? `\u001B[${code}m${text}\u001B[0m` : text);
  return { strong: wrapIn('1'), alarm: wrapIn('1;31') };
}
