import type { Metric } from '../measure/metric.ts';
import {
  displayUnit,
  formatMultiple,
  formatNumber,
  formatPercent,
  formatQuantity,
  type UnitSystem,
} from './formatQuantity.ts';
import type { MetricLabel } from './metricLabels.ts';

/** The value of a metric with unit and suffix ("1402 A crest"); "—" where it is missing. */
export function formatMetric(metric: Metric, label: MetricLabel, units: UnitSystem): string {
  if (label.percent === true && metric.value !== null) return formatPercent(metric.value);
  const text = formatQuantity(metric.value, metric.unit, { system: units, milli: label.milli === true });
  return metric.value === null || label.suffix === undefined ? text : `${text} ${label.suffix}`;
}

/**
 * "(1180 … 1630)": what circuits that fit the data equally well give for a metric, in the unit its value is shown in.
 *
 * @param low SI
 * @param high SI
 */
export function formatRange(
  low: number,
  high: number,
  metric: Metric,
  label: MetricLabel,
  units: UnitSystem,
): string {
  const milli = label.milli === true;
  const perSi = label.percent === true ? 100 : displayUnit(metric.unit, { system: units, milli }).perSi;
  return `(${formatNumber(low * perSi)} … ${formatNumber(high * perSi)}${label.percent === true ? ' %' : ''})`;
}

/** "18.1 × rated" where the base is a rated value, else the base in full; '' without a multiple. */
export function formatMetricMultiple(metric: Metric): string {
  if (metric.multiple === undefined) return '';
  const { value, of } = metric.multiple;
  return formatMultiple(value, /\brated\b/u.test(of) ? 'rated' : of);
}
