import type { RunResult } from '../../measure/result.ts';
import type { UnitSystem } from '../formatQuantity.ts';

/** How a laboratory sheet is written. */
export interface LaboratoryOptions {
  readonly units: UnitSystem;
  /** Leave every prediction out: for students who predict before they measure. */
  readonly blank: boolean;
  /** Version of the program. */
  readonly version: string;
}

/** The same with the run that the pictures are drawn from: the scenario's own. */
export interface LaboratoryPageOptions extends LaboratoryOptions {
  readonly run: RunResult;
}
