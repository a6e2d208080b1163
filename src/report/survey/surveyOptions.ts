import type { UnitSystem } from '../formatQuantity.ts';
import type { SurveyShard } from './surveyWords.ts';

/** How a survey is written up. */
export interface SurveyOptions {
  readonly units: UnitSystem;
  /** Version of the program. */
  readonly version: string;
  /** Null: the whole survey. */
  readonly shard: SurveyShard | null;
  /** Name of the survey's file for the commands; absent where it is not known, as after a merge. */
  readonly surveyFile?: string;
  /** The folder that was named with `--out`, for the commands; absent where none was. */
  readonly folder?: string;
  /** For a search. */
  readonly worst?: {
    /** The metric that is sought, of the scenario as written, SI; null where that run has none. */
    readonly asWritten: number | null;
  };
}
