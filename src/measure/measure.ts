import { ratedPoint } from '../machine/ratedPoint.ts';
import { isSuccessful } from '../simulate/status.ts';
import type { Trajectory } from '../simulate/trajectory.ts';
import { controlFindings } from './controlFindings.ts';
import { energyLedger } from './energyLedger.ts';
import { found, type Measurement, missing } from './measurement.ts';
import { METRIC_KEYS, type Metric, type MetricKey, type Metrics } from './metric.ts';
import { metricsOf } from './metricParts.ts';
import { operationsOf } from './operations.ts';
import { quadratureOf } from './quadrature.ts';
import type { RunResult } from './result.ts';
import { LARGEST_RESIDUAL, warningsOf } from './warnings.ts';

/**
 * Everything measured on a run.
 *
 * @throws ScenarioError where the rated point cannot be had: too little is stated, or the circuit does not deliver the
 * rated power
 */
export function measure(trajectory: Trajectory): RunResult {
  const { scenario } = trajectory;
  const rated = ratedPoint(scenario.machine, scenario.supply);
  const quadrature = quadratureOf(trajectory);
  const operations = operationsOf(trajectory);
  const ledger = energyLedger(quadrature);
  const m: Measurement = { quadrature, operations, rated };
  const all: Partial<Record<MetricKey, Metric>> = {
    ...metricsOf(m),
    ledgerResidual: found('ledgerResidual', ledger.residual),
  };
  const metrics = inOrder(all);
  return {
    scenario,
    status: trajectory.status,
    trajectory,
    metrics,
    ledger,
    operations,
    usable: isSuccessful(trajectory.status) && ledger.residual <= LARGEST_RESIDUAL,
    controlFindings: controlFindings(trajectory),
    rated,
    warnings: warningsOf(trajectory, operations, metrics, ledger),
  };
}

/** All metrics, in the order of presentation. */
function inOrder(all: Partial<Record<MetricKey, Metric>>): Metrics {
  const ordered = METRIC_KEYS.map((key) => [key, all[key] ?? missing(key, 'not measured')] as const);
  return Object.fromEntries(ordered) as Record<MetricKey, Metric>;
}
