import type { Metric } from '../../measure/metric.ts';
import type { RunResult } from '../../measure/result.ts';
import { isReported } from '../elements.ts';
import { formatMetric, formatMetricMultiple } from '../formatMetric.ts';
import { formatInstant, type UnitSystem } from '../formatQuantity.ts';
import { METRIC_GROUPS, type MetricLabel } from '../metricLabels.ts';
import type { NumberGroup, NumberRow } from './numberRows.ts';

/**
 * Every figure of a run under the headings, with the labels and in the digits of the report's table. Figures of elements that the scenario
 * does not have are left out, and with them headings that then have none.
 *
 * @param units of the texts; `value` is in SI all the same
 */
export function numbersOf(result: RunResult, units: UnitSystem): NumberGroup[] {
  return METRIC_GROUPS.map(({ title, rows }) => ({
    title,
    rows: rows
      .filter(({ key }) => isReported(result, key))
      .map((label) => numberRow(result.metrics[label.key], label, units)),
  })).filter(({ rows }) => rows.length > 0);
}

function numberRow(metric: Metric, label: MetricLabel, units: UnitSystem): NumberRow {
  return {
    key: label.key,
    label: label.label,
    text: formatMetric(metric, label, units),
    value: metric.value,
    detail:
      metric.value === null
        ? `not in this run: ${metric.missing ?? 'no reason stated'}`
        : circumstances(metric),
    definition: metric.definition,
  };
}

/** Multiple, phase and instant, as far as there are any. */
function circumstances(metric: Metric): string {
  const phase = metric.phase === undefined ? '' : `phase ${metric.phase}`;
  const at = metric.time === undefined ? '' : `at ${formatInstant(metric.time)}`;
  return [formatMetricMultiple(metric), phase, at].filter((part) => part !== '').join(', ');
}
