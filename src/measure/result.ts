import type { RatedPoint } from '../machine/ratedPoint.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { RunStatus } from '../simulate/status.ts';
import type { Trajectory } from '../simulate/trajectory.ts';
import type { EnergyLedger } from './energyLedger.ts';
import type { Metrics } from './metric.ts';

/** One run and everything measured on it. */
export interface RunResult {
  readonly scenario: Scenario;
  readonly status: RunStatus;
  readonly trajectory: Trajectory;
  readonly metrics: Metrics;
  readonly ledger: EnergyLedger;
  /** Base of the multiples. */
  readonly rated: RatedPoint;
  /** Things a reader must know about the figures; empty when there are none. */
  readonly warnings: readonly string[];
}
