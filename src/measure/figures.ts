import { ratedPoint } from '../machine/ratedPoint.ts';
import type { RunStatus } from '../simulate/status.ts';
import type { Trajectory } from '../simulate/trajectory.ts';
import { energyLedger } from './energyLedger.ts';
import type { MetricKey } from './metric.ts';
import { metricsOf } from './metricParts.ts';
import { operationsOf } from './operations.ts';
import { passingQuadrature } from './quadrature.ts';

/** Some metrics of a run, and what is needed to believe them. */
export interface Figures {
  readonly status: RunStatus;
  /** Residual of the energy balance, of its throughput. */
  readonly residual: number;
  /** SI, one for each metric asked for; null where the run does not contain what is measured. */
  readonly values: readonly (number | null)[];
}

/**
 * The same numbers as `measure` gives, without those that nobody asks for.
 *
 * @param keys metrics asked for
 */
export function figures(trajectory: Trajectory, keys: readonly MetricKey[]): Figures {
  const { scenario } = trajectory;
  const quadrature = passingQuadrature(trajectory);
  const { residual } = energyLedger(quadrature);
  const found = metricsOf(
    {
      quadrature,
      operations: operationsOf(trajectory),
      rated: ratedPoint(scenario.machine, scenario.supply),
    },
    keys,
  );
  return {
    status: trajectory.status,
    residual,
    values: keys.map((key) => (key === 'ledgerResidual' ? residual : (found[key]?.value ?? null))),
  };
}
