import type { MetricKey, Metrics } from '../measure/metric.ts';
import type { RunResult } from '../measure/result.ts';
import { bandOf, type PlugBands } from '../survey/plugBands.ts';
import { formatMetric, formatMetricMultiple, formatRange } from './formatMetric.ts';
import { formatNumber, type UnitSystem } from './formatQuantity.ts';
import { METRIC_GROUPS, type MetricLabel } from './metricLabels.ts';

/** One of the four numbers that matter most. */
export interface KeyNumber {
  /** The metric whose value it shows; null: none has one. */
  readonly key: MetricKey | null;
  readonly label: string;
  /** With unit. */
  readonly value: string;
  /** "(1180 … 1630)": what the data leave open, in the same unit. */
  readonly range?: string;
  /** Multiple and circumstances, or why the number is missing. */
  readonly detail: string;
}

const LABELS: ReadonlyMap<MetricKey, MetricLabel> = new Map(
  METRIC_GROUPS.flatMap((group) => group.rows).map((row) => [row.key, row]),
);

/** How a metric is labelled. */
export function metricLabel(key: MetricKey): MetricLabel {
  return LABELS.get(key) ?? { key, label: key };
}

/** Of several metrics of one unit, the key of the largest magnitude; null when all are missing. */
export function worstOf(metrics: Metrics, keys: readonly MetricKey[]): MetricKey | null {
  let worst: MetricKey | null = null;
  for (const key of keys) {
    const size = Math.abs(metrics[key].value ?? 0);
    if (metrics[key].value !== null && (worst === null || size > Math.abs(metrics[worst].value ?? 0)))
      worst = key;
  }
  return worst;
}

/** The key of the largest air-gap torque of the run, by magnitude. */
export function worstTorqueKey(metrics: Metrics): MetricKey | null {
  return worstOf(metrics, TORQUES);
}

/** The key of the highest phase current of the run. */
export function peakCurrentKey(metrics: Metrics): MetricKey | null {
  return worstOf(metrics, ['plugPeakCurrent', 'startPeakCurrent']);
}

/** The key of the largest torque in the elastic coupling; null without one. */
export function worstCouplingKey(metrics: Metrics): MetricKey | null {
  return worstOf(metrics, ['plugCouplingTorque', 'startCouplingTorque']);
}

/** Extremes of the air-gap torque over the run's operations. */
export const TORQUES = [
  'plugMinimumTorque',
  'plugMaximumTorque',
  'startMaximumTorque',
  'startMinimumTorque',
] as const;

/**
 * Peak current, worst torque, time to zero speed, rotor heat as multiple of a start, in that order.
 *
 * @param bands what a nameplate leaves open; each number then carries its range
 * @param worst the run at the worst of the closing angles; current and torque are then its own, and carry no range, which is one of a
 * single angle
 */
export function keyNumbers(
  result: RunResult,
  units: UnitSystem,
  bands: PlugBands | null = null,
  worst: RunResult | null = null,
): KeyNumber[] {
  const { metrics } = result;
  const peaks = worst?.metrics ?? metrics;
  const ranged = (key: MetricKey, number: KeyNumber): KeyNumber => {
    const band = bandOf(bands, key);
    if (band === undefined) return number;
    return { ...number, range: formatRange(band.low, band.high, metrics[key], metricLabel(key), units) };
  };
  const extreme = (label: string, key: MetricKey | null, otherwise: MetricKey): KeyNumber => {
    const metric = peaks[key ?? otherwise];
    if (key === null) return { key, label, value: '—', detail: metric.missing ?? 'not in this run' };
    const when = key.startsWith('start') ? 'while starting' : 'while plugging';
    const phase = metric.phase === undefined ? [] : [`phase ${metric.phase}`];
    const angle = worst === null ? '' : 'at the worst closing angle';
    const detail = [formatMetricMultiple(metric), ...phase, when, angle]
      .filter((part) => part !== '')
      .join(', ');
    const ofAngle = worst === null ? ranged : (_: MetricKey, number: KeyNumber) => number;
    return ofAngle(key, { key, label, value: formatMetric(metric, metricLabel(key), units), detail });
  };
  const stop = metrics.stopTimeFromParting;
  return [
    extreme('Peak current', peakCurrentKey(peaks), 'plugPeakCurrent'),
    extreme('Worst torque', worstTorqueKey(peaks), 'plugMinimumTorque'),
    ranged('stopTimeFromParting', {
      key: stop.value === null ? null : 'stopTimeFromParting',
      label: 'Time to zero',
      value: formatMetric(stop, metricLabel('stopTimeFromParting'), units),
      detail: stop.value === null ? (stop.missing ?? 'not in this run') : 'from the parting of the contacts',
    }),
    rotorHeat(metrics, units, ranged),
  ];
}

/**
 * As multiple of a start; in a run without a whole start, as multiple of the kinetic energy. Of a full reversal the heat up
 * to full reverse speed, of a stop that up to zero speed.
 */
function rotorHeat(
  metrics: Metrics,
  units: UnitSystem,
  ranged: (key: MetricKey, number: KeyNumber) => KeyNumber,
): KeyNumber {
  const label = 'Rotor heat';
  const reversed = metrics.reversalRotorHeat.value !== null;
  const group = reversed ? 'reversal' : 'plug';
  const ratio = metrics[`${group}ToStartHeatRatio`];
  const heat = formatMetric(metrics[`${group}RotorHeat`], metricLabel(`${group}RotorHeat`), units);
  if (ratio.value !== null) {
    const what = reversed ? 'one full reversal' : 'one stop, up to zero speed';
    const value = `${formatNumber(ratio.value)} × a start`;
    const key = `${group}ToStartHeatRatio` as const;
    return ranged(key, { key, label, value, detail: `${heat} in ${what}` });
  }
  const missing = ratio.missing ?? 'not in this run';
  const kinetic = metrics[`${group}RotorHeatMultiple`].value;
  if (kinetic === null) return { key: null, label, value: '—', detail: missing };
  const detail = `${reversed ? '' : 'up to zero speed; '}${formatNumber(kinetic)} × kinetic energy; no multiple of a start: ${missing}`;
  const key = `${group}RotorHeat` as const;
  return ranged(key, { key, label, value: heat, detail });
}
