import type { Origin } from '../../scenario/origin.ts';
import type { UnitSystem } from '../formatQuantity.ts';

/** How the note on a judgement is written. */
export interface JudgementOptions {
  readonly units: UnitSystem;
  /** Version of the program. */
  readonly version: string;
  /** Where each input comes from. */
  readonly origins?: readonly Origin[];
}
