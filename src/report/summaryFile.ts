import type { RatedPoint } from '../machine/ratedPoint.ts';
import type { ControlFinding } from '../measure/controlFindings.ts';
import type { EnergyLedger } from '../measure/energyLedger.ts';
import type { Metric, MetricKey } from '../measure/metric.ts';
import type { Estimation, Nameplate } from '../scenario/nameplate.ts';
import type { Command, Scenario } from '../scenario/scenario.ts';
import type { Channel } from '../simulate/channels.ts';
import type { RunStatus } from '../simulate/status.ts';
import type { RunEvent } from '../simulate/trajectory.ts';
import type { PlugBands } from '../survey/plugBands.ts';

/** Version of the format below. Additions keep it; a change of meaning or a removal raises it. */
export const SUMMARY_VERSION = 1;

/**
 * What `summary.json` holds, and what `--json` prints. All values are SI; speeds rad/s, angles rad, times s from the
 * start of the run. There is no NaN and no infinity in it: a number that does not exist is null.
 */
export interface SummaryFile {
  /** Version of this format. */
  readonly summaryVersion: typeof SUMMARY_VERSION;
  /** The program that made the file, and its version. */
  readonly program: { readonly name: 'countertorque'; readonly version: string };
  /** Everything that determined the run, with defaults filled in; running it again gives the same figures. */
  readonly scenario: Scenario;
  /** How the run ended; `successful` is false when the figures must not be used as they stand. */
  readonly status: RunStatus & { readonly successful: boolean };
  /** What the run shows, in sentences, in SI units. */
  readonly finding: string;
  /** One entry per metric, keyed by its name; a metric that the run does not contain has value null and `missing`. */
  readonly metrics: Readonly<Record<MetricKey, SummaryMetric>>;
  /** Where the energy went, J; see each term in the energy ledger's definition. */
  readonly ledger: EnergyLedger;
  /** How the circuit was found; null where it was given. */
  readonly estimation: Estimation | null;
  /** The nameplate it was found from; null where there is none. */
  readonly nameplate: Nameplate | null;
  /** What that nameplate leaves open in the metrics; null where that was not computed. */
  readonly bands: PlugBands | null;
  /** Current and torque at rated output: the base of all multiples. */
  readonly rated: RatedPoint;
  /** Everything discrete that happened, in order. */
  readonly events: readonly RunEvent[];
  /** What the contactors were made to do: the scenario's commands, or what its control circuit made of the buttons. */
  readonly commands: readonly Command[];
  /** Every change of every device, coil and pole. */
  readonly channels: readonly Channel[];
  /** What the control did that decides about everything else, the gravest first. */
  readonly controlFindings: readonly ControlFinding[];
  /** How the run was integrated: number of `evaluations` of the right-hand side, number of `steps`, and the stretches. */
  readonly integration: {
    readonly evaluations: number;
    readonly steps: number;
    readonly segments: readonly SummarySegment[];
  };
  /** Step of trace.csv, s. */
  readonly traceStep: number;
  /** Things a reader must know about the figures. */
  readonly warnings: readonly string[];
}

/** A metric with every field present. */
export interface SummaryMetric {
  /** SI; null when the run does not contain what is measured. */
  readonly value: number | null;
  /** SI unit; '1' for a ratio. */
  readonly unit: string;
  /** Time of occurrence, s. */
  readonly time: number | null;
  readonly phase: Metric['phase'] | null;
  /** The value as a multiple of a stated base. */
  readonly multiple: Metric['multiple'] | null;
  /** What is measured, in words. */
  readonly definition: string;
  /** Why the value is null. */
  readonly missing: string | null;
}

/** A stretch of the run with one set of conducting terminals, s. */
export interface SummarySegment {
  /** Beginning, s from the start of the run. */
  readonly t0: number;
  /** End, s from the start of the run. */
  readonly t1: number;
  readonly kind: 'three' | 'two' | 'none';
  /** For 'two': the terminal without current; else null. */
  readonly openPhase: 'A' | 'B' | 'C' | null;
  /** Axes that the equations were written in, in words. */
  readonly frame: string;
}
