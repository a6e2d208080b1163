import type { Estimation, Nameplate } from '../scenario/nameplate.ts';
import type { PlugBands } from '../survey/plugBands.ts';

/** What is known of a run's machine beside the scenario; all of it may be absent. */
export interface ReportBackground {
  /** How the circuit was found; null or absent where it was given. */
  readonly estimation?: Estimation | null;
  /** The nameplate the circuit was found from. */
  readonly nameplate?: Nameplate | null;
  /** What that nameplate leaves open in the figures. */
  readonly bands?: PlugBands | null;
}
