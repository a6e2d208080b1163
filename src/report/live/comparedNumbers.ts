import { DEFINITIONS } from '../../measure/definitions.ts';
import type { MetricKey } from '../../measure/metric.ts';
import { formatMetric } from '../formatMetric.ts';
import { formatNumber, formatPercent, formatQuantity, type UnitSystem } from '../formatQuantity.ts';
import { metricLabel } from '../keyNumbers.ts';
import type { NumberRow } from './numberRows.ts';
import type { RunView } from './runView.ts';

/** A figure of the run that is shown, beside that of the pinned run. */
export interface ComparedNumber extends NumberRow {
  /** In the same units; '' without a pinned run, "—" where that one does not contain it. */
  readonly pinnedText: string;
  /** "−18 %", "+0.12 s", "unchanged"; '' where nothing can be compared. */
  readonly changeText: string;
}

/** Figures under one heading. */
export interface ComparedGroup {
  readonly title: string;
  readonly rows: readonly ComparedNumber[];
}

/** A change of less than this share of the value is none that a person means: the last digit shown is worth more. */
const UNCHANGED = 5e-4;

/** From so many times the pinned value on, per cent would be a long number. */
const LEAST_MULTIPLE = 10;

/** Beyond so many times it the pinned value was as good as nothing, and a multiple of it says nothing. */
const MOST_MULTIPLE = 1000;

/**
 * The figures of a run with their change against a pinned run. Times and angles are compared by their difference, everything else by its
 * share of the pinned value, and what changes its sign or was as good as nothing by its difference too. What is better is not judged.
 */
export function comparedNumbers(view: RunView, pinned: RunView | null): ComparedGroup[] {
  const before = new Map(pinned?.numbers.flatMap(({ rows }) => rows).map((row) => [row.key, row]));
  return view.numbers.map(({ title, rows }) => ({
    title,
    rows: rows.map((row) => {
      const pin = before.get(row.key);
      return {
        ...row,
        pinnedText: pinned === null ? '' : pinnedText(row, pin, view.units),
        changeText: changeText(row, pin?.value ?? null, view.units),
      };
    }),
  }));
}

/** The change of each key number of a run against a pinned run, in their order; '' where nothing can be compared. */
export function keyChanges(view: RunView, pinned: RunView | null): string[] {
  const rows = comparedNumbers(view, pinned).flatMap((group) => group.rows);
  return view.keyNumbers.map(({ key }) => rows.find((row) => row.key === key)?.changeText ?? '');
}

/** The number behind a metric that a view shows, SI with all digits; '' where it has none. */
export function rawNumber(view: RunView, key: MetricKey | null): string {
  const value = view.numbers.flatMap(({ rows }) => rows).find((row) => row.key === key)?.value ?? null;
  return value === null ? '' : String(value);
}

/** In the units of the run that is shown, also where the run was pinned in the others. */
function pinnedText(row: NumberRow, pin: NumberRow | undefined, units: UnitSystem): string {
  const { unit, definition } = DEFINITIONS[row.key];
  return formatMetric({ value: pin?.value ?? null, unit, definition }, metricLabel(row.key), units);
}

/** Angles that are directions: a turn more is the same. */
const DIRECTIONS: readonly MetricKey[] = ['residualAngle', 'supplyAngleAtTouch'];

/** An angle, rad, as the shorter way round. */
function turned(angle: number): number {
  return angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
}

function changeText(row: NumberRow, before: number | null, units: UnitSystem): string {
  const { value } = row;
  if (value === null || before === null) return '';
  const difference = DIRECTIONS.includes(row.key) ? turned(value - before) : value - before;
  if (Math.abs(difference) <= UNCHANGED * Math.max(Math.abs(value), Math.abs(before))) return 'unchanged';
  const label = metricLabel(row.key);
  const { unit } = DEFINITIONS[row.key];
  const ratio = before === 0 ? 0 : value / before;
  const hasShare = ratio > 0 && ratio < MOST_MULTIPLE;
  // The share of an instant or an angle depends on where it is counted from.
  if (!hasShare || unit === 's' || unit === 'rad') {
    const size = Math.abs(difference);
    const milli = label.milli === true;
    const text =
      label.percent === true ? formatPercent(size) : formatQuantity(size, unit, { system: units, milli });
    return signed(difference, text);
  }
  if (ratio >= LEAST_MULTIPLE) return `${formatNumber(ratio)} times`;
  // A torque of −300 that was −200 has grown: shares are of magnitudes.
  const percent = 100 * (ratio - 1);
  return signed(percent, `${wholeOrTenth(Math.abs(percent))} %`);
}

/** Per cent: whole from 10 on, below with one decimal. */
function wholeOrTenth(percent: number): string {
  return percent >= 9.95 ? percent.toFixed(0) : percent.toFixed(1);
}

function signed(value: number, text: string): string {
  return `${value < 0 ? '−' : '+'}${text}`;
}
