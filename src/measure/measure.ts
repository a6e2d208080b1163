import { ratedPoint } from '../machine/ratedPoint.ts';
import type { Trajectory } from '../simulate/trajectory.ts';
import { type EnergyLedger, energyLedger } from './energyLedger.ts';
import { largest } from './extremum.ts';
import { found, type Measurement, missing } from './measurement.ts';
import { METRIC_KEYS, type Metric, type MetricKey, type Metrics } from './metric.ts';
import { type Operations, operationsOf } from './operations.ts';
import { poleMetrics } from './poleMetrics.ts';
import { type Quadrature, quadratureOf } from './quadrature.ts';
import type { RunResult } from './result.ts';
import { aftermathMetrics, changeoverMetrics, plugMetrics } from './reversalMetrics.ts';
import { startMetrics } from './startMetrics.ts';

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
  return {
    scenario,
    status: trajectory.status,
    trajectory,
    metrics: inOrder(all),
    ledger,
    rated,
    warnings: warningsOf(trajectory, operations, ledger),
  };
}

/** All metrics, in the order of presentation. */
function inOrder(all: Partial<Record<MetricKey, Metric>>): Metrics {
  const ordered = METRIC_KEYS.map((key) => [key, all[key] ?? missing(key, 'not measured')] as const);
  return Object.fromEntries(ordered) as Record<MetricKey, Metric>;
}

function lowestTerminalVoltage(quadrature: Quadrature): Metric {
  const { tStart, tEnd, scenario } = quadrature.trajectory;
  const lowest = largest(quadrature, 'terminalVoltage', (voltage) => -voltage, tStart, tEnd);
  if (lowest === null) return missing('lowestTerminalVoltage', 'the three terminals are never connected');
  return found('lowestTerminalVoltage', -lowest.value, {
    time: lowest.time,
    multiple: { value: -lowest.value / scenario.supply.lineVoltage, of: 'supply voltage' },
  });
}

/** A residual above this says loudly that the energy balance does not close (at default tolerance it is below 1e-6). */
const LARGEST_RESIDUAL = 1e-6;

function warningsOf(trajectory: Trajectory, operations: Operations, ledger: EnergyLedger): string[] {
  const warnings: string[] = [];
  if (!(ledger.residual <= LARGEST_RESIDUAL))
    warnings.push(
      `The energy balance does not close: its error is ${ledger.residual.toExponential(1)} of the energy put through ` +
        '(at most 1e-6 is expected). Do not use these figures; tighten solver.relativeTolerance.',
    );
  for (const event of trajectory.events)
    if (event.kind === 'plugRefused')
      warnings.push(`At ${event.t.toFixed(3)} s: ${event.text}. The machine coasts.`);
  if (operations.furtherReversals > 0)
    warnings.push(
      `The run has ${operations.furtherReversals} more reversing action${operations.furtherReversals > 1 ? 's' : ''} after the first; ` +
        'times and heats are those of the first, peaks those of all of them together.',
    );
  return warnings;
}
