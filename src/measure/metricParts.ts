import type { Measurement, MetricGroup } from './measurement.ts';
import { METRIC_KEYS, type MetricKey } from './metric.ts';
import { plantMetrics } from './plantMetrics.ts';
import { poleMetrics } from './poleMetrics.ts';
import { aftermathMetrics, changeoverMetrics, plugMetrics } from './reversalMetrics.ts';
import { startMetrics } from './startMetrics.ts';

/** Metrics that are found together. */
interface MetricPart {
  readonly of: (m: Measurement) => MetricGroup;
  /** Whether it finds a metric. */
  readonly covers: (key: MetricKey) => boolean;
}

const within = (first: MetricKey, last: MetricKey): MetricPart['covers'] => {
  const [from, to] = [METRIC_KEYS.indexOf(first), METRIC_KEYS.indexOf(last)];
  return (key) => METRIC_KEYS.indexOf(key) >= from && METRIC_KEYS.indexOf(key) <= to;
};

/** Everything but the ledger's residual, in the order of presentation. */
const PARTS: readonly MetricPart[] = [
  { of: startMetrics, covers: within('startPeakCurrent', 'startRotorHeatMultiple') },
  { of: changeoverMetrics, covers: within('commandToTouch', 'supplyAngleAtTouch') },
  { of: plugMetrics, covers: within('plugPeakCurrent', 'plugRotorResistorHeat') },
  { of: aftermathMetrics, covers: within('switchOpeningTime', 'reversalToStartHeatRatio') },
  { of: plantMetrics, covers: within('lowestTerminalVoltage', 'torsionalFrequency') },
  { of: poleMetrics, covers: within('runPoleAPartingCurrent', 'plugPoleCArcCharge') },
];

/**
 * Finds metrics.
 *
 * @param wanted parts without any of these are left out; absent: everything
 */
export function metricsOf(m: Measurement, wanted?: readonly MetricKey[]): MetricGroup {
  const parts = wanted === undefined ? PARTS : PARTS.filter(({ covers }) => wanted.some(covers));
  return Object.assign({}, ...parts.map(({ of }) => of(m))) as MetricGroup;
}
