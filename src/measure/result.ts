import type { RatedPoint } from '../machine/ratedPoint.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { RunStatus } from '../simulate/status.ts';
import type { Trajectory } from '../simulate/trajectory.ts';
import type { ControlFinding } from './controlFindings.ts';
import type { EnergyLedger } from './energyLedger.ts';
import type { Metrics } from './metric.ts';
import type { Operations } from './operations.ts';

/** One run and everything measured on it. */
export interface RunResult {
  readonly scenario: Scenario;
  readonly status: RunStatus;
  readonly trajectory: Trajectory;
  readonly metrics: Metrics;
  readonly ledger: EnergyLedger;
  /** What the metrics refer to. */
  readonly operations: Operations;
  /** False when the run ended badly or its energy balance does not close: the figures must not be used as they stand. */
  readonly usable: boolean;
  /** What the control did that decides about everything else, the gravest first. */
  readonly controlFindings: readonly ControlFinding[];
  /** Base of the multiples. */
  readonly rated: RatedPoint;
  /** Things a reader must know about the figures; empty when there are none. */
  readonly warnings: readonly string[];
}
