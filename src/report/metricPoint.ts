import type { Metric, MetricKey } from '../measure/metric.ts';
import type { RunResult } from '../measure/result.ts';
import type { PhaseName } from '../scenario/scenario.ts';
import type { PointMark } from './figureSpec.ts';
import { formatMetric, formatMetricMultiple } from './formatMetric.ts';
import { displayUnit, type UnitSystem } from './formatQuantity.ts';
import { metricLabel } from './keyNumbers.ts';
import type { Quantity } from './palette.ts';

/** The column of a phase's current and its colour. */
export const CURRENT_COLUMN = { A: 'iA', B: 'iB', C: 'iC' } as const;
/** Colour of each phase current. */
export const CURRENT_COLOUR = { A: 'currentA', B: 'currentB', C: 'currentC' } as const satisfies Record<
  PhaseName,
  Quantity
>;

/** How a marked point is labelled and placed. */
export interface PointOptions {
  readonly units: UnitSystem;
  /** From s to the figure's axis. */
  readonly toAxis: (t: number) => number;
  /** Only metrics that occur in [t0, t1] s are marked. */
  readonly t0: number;
  readonly t1: number;
}

/** The mark of a torque extremum at its exact place; none when it is missing or outside the window. */
export function torquePoint(
  result: RunResult,
  key: MetricKey | null,
  options: PointOptions,
  quantity: 'torque' | 'couplingTorque' = 'torque',
): PointMark[] {
  const metric = found(result, key, options);
  if (key === null || metric === null) return [];
  const y = metric.value * displayUnit('N·m', { system: options.units }).perSi;
  const label = pointLabel(metric, key, options);
  const named = quantity === 'couplingTorque' ? `coupling ${label}` : label;
  return [{ x: options.toAxis(metric.time), y, label: named, quantity }];
}

/** The mark of a current peak. The metric is a magnitude; its sign is read from the run. */
export function currentPoint(
  result: RunResult,
  key: MetricKey | null,
  phases: readonly PhaseName[],
  options: PointOptions,
): PointMark[] {
  const metric = found(result, key, options);
  if (key === null || metric === null || metric.phase === undefined || !phases.includes(metric.phase))
    return [];
  const sign = result.trajectory.at(metric.time)[CURRENT_COLUMN[metric.phase]] < 0 ? -1 : 1;
  const quantity = CURRENT_COLOUR[metric.phase];
  const label = pointLabel(metric, key, options);
  return [{ x: options.toAxis(metric.time), y: sign * Math.abs(metric.value), label, quantity }];
}

type Found = Metric & { readonly value: number; readonly time: number };

function found(result: RunResult, key: MetricKey | null, options: PointOptions): Found | null {
  if (key === null) return null;
  const metric = result.metrics[key];
  const { value, time } = metric;
  if (value === null || time === undefined || time < options.t0 || time > options.t1) return null;
  return { ...metric, value, time };
}

function pointLabel(metric: Metric, key: MetricKey, options: PointOptions): string {
  const parts = [formatMetric(metric, metricLabel(key), options.units), formatMetricMultiple(metric)];
  return parts.filter((part) => part !== '').join(', ');
}
