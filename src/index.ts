/** The public API: a scenario in, a run and its figures out. */

// measure
export type { EnergyLedger } from './measure/energyLedger.ts';
export { measure } from './measure/measure.ts';
export { METRIC_KEYS, type Metric, type MetricKey, type Metrics } from './measure/metric.ts';
export type { RunResult } from './measure/result.ts';
export { simulate } from './measure/simulate.ts';
