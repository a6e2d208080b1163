import type { Metric, MetricKey } from '../measure/metric.ts';
import { formatMetric } from './formatMetric.ts';
import { formatNumber, formatPercent, type UnitSystem } from './formatQuantity.ts';
import { metricLabel } from './keyNumbers.ts';
import type { ComparedJudgement } from './renderCompareHtml.ts';

/** Metrics of a comparison, with what tells them apart from their namesakes. */
const ROWS: readonly (readonly [MetricKey, string])[] = [
  ['startPeakCurrent', 'Start: phase current'],
  ['startMaximumTorque', 'Start: highest torque'],
  ['startTime', 'Start: run-up time'],
  ['startRotorHeat', 'Start: rotor heat'],
  ['extinctionToTouch', 'Dead time, without current'],
  ['arcMargin', 'Margin, last arc to touch'],
  ['residualVoltage', 'Residual voltage at touch'],
  ['plugPeakCurrent', 'Plug: phase current'],
  ['plugMinimumTorque', 'Plug: most negative torque'],
  ['plugMaximumTorque', 'Plug: most positive torque'],
  ['plugCouplingTorque', 'Plug: coupling torque'],
  ['plugVoltageDip', 'Plug: voltage dip'],
  ['stopTimeFromTouch', 'Plug: touch to zero speed'],
  ['stopRevolutions', 'Revolutions to stop'],
  ['plugRotorHeat', 'Plug: rotor heat'],
  ['plugStatorHeat', 'Plug: stator heat'],
  ['creepRevolutions', 'Creep in reverse'],
  ['reversalTime', 'Full reversal time'],
  ['reversalRotorHeat', 'Full reversal: rotor heat'],
];

/** A metric of two runs. */
export interface ComparedMetric {
  readonly key: MetricKey;
  readonly label: string;
  /** With unit; "—" where the run does not contain it. */
  readonly a: string;
  readonly b: string;
  /** What B has more than A, as a share of A: "+12.3 %", "228 times A"; "—" where one is missing or A is zero. */
  readonly difference: string;
}

/** The figures of two runs side by side; those that neither contains are left out. */
export function comparedMetrics(
  a: ComparedJudgement,
  b: ComparedJudgement,
  units: UnitSystem,
): ComparedMetric[] {
  return ROWS.flatMap(([key, label]) => {
    const [one, other] = [a.judged.result.metrics[key], b.judged.result.metrics[key]];
    if (one.value === null && other.value === null) return [];
    const show = (metric: Metric) => formatMetric(metric, metricLabel(key), units);
    return [{ key, label, a: show(one), b: show(other), difference: difference(one.value, other.value) }];
  });
}

function difference(a: number | null, b: number | null): string {
  if (a === null || b === null || a === 0) return '—';
  return againstFirst(a, b);
}

/** From so many times the first value on, the second is told as a multiple of it. */
const LEAST_MULTIPLE = 10;

/** What B is against A, which is not zero: "+12.3 %"; "228 times A" where per cent would be a long number. */
export function againstFirst(a: number, b: number): string {
  if (b / a >= LEAST_MULTIPLE) return `${formatNumber(b / a)} times A`;
  const share = (b - a) / Math.abs(a);
  return share > 0 ? `+${formatPercent(share)}` : formatPercent(share);
}
