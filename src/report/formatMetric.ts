import type { Metric } from '../measure/metric.ts';
import { formatMultiple, formatQuantity, type UnitSystem } from './formatQuantity.ts';
import type { MetricLabel } from './metricLabels.ts';

/** The value of a metric with unit and suffix ("1402 A crest"); "—" where it is missing. */
export function formatMetric(metric: Metric, label: MetricLabel, units: UnitSystem): string {
  const text = formatQuantity(metric.value, metric.unit, { system: units, milli: label.milli === true });
  return metric.value === null || label.suffix === undefined ? text : `${text} ${label.suffix}`;
}

/** "18.1 × rated" where the base is a rated value, else the base in full; '' without a multiple. */
export function formatMetricMultiple(metric: Metric): string {
  if (metric.multiple === undefined) return '';
  const { value, of } = metric.multiple;
  return formatMultiple(value, /\brated\b/u.test(of) ? 'rated' : of);
}
