import { ratedPoint } from '../machine/ratedPoint.ts';
import { isSuccessful } from '../simulate/status.ts';
import type { Trajectory } from '../simulate/trajectory.ts';
import { energyLedger } from './energyLedger.ts';
import { largest } from './extremum.ts';
import { found, type Measurement, missing } from './measurement.ts';
import { METRIC_KEYS, type Metric, type MetricKey, type Metrics } from './metric.ts';
import { operationsOf } from './operations.ts';
import { poleMetrics } from './poleMetrics.ts';
import { type Quadrature, quadratureOf } from './quadrature.ts';
import type { RunResult } from './result.ts';
import { aftermathMetrics, changeoverMetrics, plugMetrics } from './reversalMetrics.ts';
import { startMetrics } from './startMetrics.ts';
import { LARGEST_RESIDUAL, warningsOf } from './warnings.ts';

/** Everything measured on a run. */
export function measure(trajectory: Trajectory): RunResult {
  const { scenario } = trajectory;
  const rated = ratedPoint(scenario.machine, scenario.supply);
  const quadrature = quadratureOf(trajectory);
  const operations = operationsOf(trajectory);
  const ledger = energyLedger(quadrature);
  const m: Measurement = { quadrature, operations, rated };
  const all: Partial<Record<MetricKey, Metric>> = {
    ...startMetrics(m),
    ...changeoverMetrics(m),
    ...plugMetrics(m),
    ...aftermathMetrics(m),
    lowestTerminalVoltage: lowestTerminalVoltage(quadrature),
    ...poleMetrics(m),
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
    rated,
    warnings: warningsOf(trajectory, operations, metrics, ledger),
  };
}

/** All metrics, in the order of presentation. */
function inOrder(all: Partial<Record<MetricKey, Metric>>): Metrics {
  const ordered = METRIC_KEYS.map((key) => [key, all[key] ?? missing(key, 'not measured')] as const);
  return Object.fromEntries(ordered) as Record<MetricKey, Metric>;
}

/** Relative difference from the supply voltage that is rounding, not a dip. */
const VOLTAGE_ROUNDING = 1e-9;

function lowestTerminalVoltage(quadrature: Quadrature): Metric {
  const { tStart, tEnd, scenario } = quadrature.trajectory;
  const { lineVoltage } = scenario.supply;
  const lowest = largest(quadrature, 'terminalVoltage', (voltage) => -voltage, tStart, tEnd);
  if (lowest === null) return missing('lowestTerminalVoltage', 'the three terminals are never connected');
  // A stiff source holds its voltage but for rounding: there is no lowest instant.
  if (Math.abs(lowest.value + lineVoltage) <= VOLTAGE_ROUNDING * lineVoltage)
    return found('lowestTerminalVoltage', lineVoltage, { multiple: { value: 1, of: 'supply voltage' } });
  return found('lowestTerminalVoltage', -lowest.value, {
    time: lowest.time,
    multiple: { value: -lowest.value / lineVoltage, of: 'supply voltage' },
  });
}
