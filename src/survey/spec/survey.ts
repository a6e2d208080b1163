import type { MetricKey } from '../../measure/metric.ts';

/** A question asked of many runs: what is varied about one scenario, how, and what is taken down of every run. */
export interface Survey {
  readonly title: string;
  readonly description: string;
  /** The scenario that is varied, as a person wrote it. */
  readonly base: BaseScenario;
  /** In the order of the file; at least one, no path twice. */
  readonly fields: readonly VariedField[];
  /** What is taken down of every run, in the order of the file; at least one, none twice. */
  readonly metrics: readonly MetricKey[];
  /** The verdict is taken down too; it takes some 15 runs where duty alone does not change. */
  readonly verdict: boolean;
  /** Whole number, 0 … 2^32 − 1: same survey, same seed, same runs. */
  readonly seed: number;
  readonly task: SurveyTask;
}

/** A scenario's text and the name of its file for messages. */
export interface BaseScenario {
  readonly fileName: string;
  readonly text: string;
}

/** One number of the scenario file that is not the same in every run. */
export interface VariedField {
  /** As written: `load.inertia`, `load.torque.0.torque`, `actions.1.at`: keys and list positions from 0, joined by dots. */
  readonly path: string;
  /** Unit in which the numbers of `spread` stand, as written: `kg m^2`, `ms`, `degC`, `%`; empty for a plain number. */
  readonly unit: string;
  readonly spread: Spread;
}

/**
 * Which numbers a field takes, all of them in the unit of the field. What can be drawn (sensitivity, random) has a
 * distribution; a sweep has a list. `values`: in the order in which they are taken. `spacing`: linear has equal steps,
 * logarithmic equal ratios.
 */
export type Spread =
  /** A list: each in turn (sweep, limit map) or each as likely as the others (random). */
  | { readonly kind: 'values'; readonly values: readonly number[] }
  /** `count` ≥ 2 numbers from `from` to `to`, both included; equal steps or equal ratios. */
  | {
      readonly kind: 'grid';
      readonly from: number;
      readonly to: number;
      readonly count: number;
      readonly spacing: 'linear' | 'logarithmic';
    }
  | { readonly kind: 'uniform'; readonly from: number; readonly to: number }
  /** Equal ratios are equally likely; 0 < from < to. */
  | { readonly kind: 'logUniform'; readonly from: number; readonly to: number }
  /** Of a normal distribution with this deviation what lies in from … to (its tails are cut and the rest scaled up). */
  | {
      readonly kind: 'normal';
      readonly mean: number;
      readonly deviation: number;
      readonly from: number;
      readonly to: number;
    }
  | { readonly kind: 'triangular'; readonly from: number; readonly peak: number; readonly to: number };

/**
 * What a survey asks. `sequence`: quasi is more even than chance, pseudo is like it. `seek`: which extreme is sought.
 * `runs`: number of runs.
 */
export type SurveyTask =
  /** Every combination of the fields' lists, the last field changing fastest. */
  | { readonly kind: 'sweep' }
  /** Draws of all fields at once. */
  | { readonly kind: 'random'; readonly runs: number; readonly sequence: 'quasi' | 'pseudo' }
  /** Global search for the extreme of one metric within the fields' ranges (`uniform` or `logUniform`). */
  | {
      readonly kind: 'worst';
      readonly metric: MetricKey;
      readonly seek: 'largest' | 'smallest' | 'largestMagnitude';
      /** Most runs the search may make. */
      readonly runs: number;
    }
  /** Tornado (each field alone at its 10 % and 90 % quantile) and first-order and total indices from `samples` · (fields + 2) runs. */
  | { readonly kind: 'sensitivity'; readonly samples: number; readonly sequence: 'quasi' | 'pseudo' }
  /** Sweep over two fields with the verdict at each cell. */
  | { readonly kind: 'limitMap' };

/** What is taken down of one run. Plain data: goes to workers, journals and tables. */
export interface SurveyRow {
  /** Number of the run in the survey's list, from 0. */
  readonly run: number;
  /** Value of each field, in its unit, in the order of the survey's fields. */
  readonly values: readonly number[];
  readonly status: RowStatus;
  /** Why the figures of this run cannot be used; null where they can. */
  readonly reason: string | null;
  /** SI, in the order of the survey's metrics; null where the run does not contain what is measured or did not end well. */
  readonly metrics: readonly (number | null)[];
  /** Null where no verdict was asked for or the scenario was refused. */
  readonly verdict: RowVerdict | null;
}

/**
 * - good: the figures can be used.
 * - refused: the values contradict each other or lie outside what a scenario may state; nothing was run.
 * - failed: the run ended badly (short circuit, overspeed, limit of steps, …).
 * - unbalanced: the energy balance of the run does not close.
 */
export type RowStatus = 'good' | 'refused' | 'failed' | 'unbalanced';

/** The verdict of one run. */
export interface RowVerdict {
  /** The outcome of its verdict. */
  readonly outcome: 'suitable' | 'notSuitable' | 'notJudged';
  /** Keys of the criteria that decide, joined by spaces; empty where a reason decides that is no criterion. */
  readonly decisive: string;
}

/** The list of runs of a survey, known beforehand. Run k has the same values whoever asks, in whatever order. */
export interface RunList {
  readonly count: number;
  /** Values of run k (0 ≤ k < count), one per field, in the fields' units. */
  readonly valuesOf: (run: number) => number[];
}

/**
 * A search whose next runs depend on the runs before: batch by batch. Same rows, same batches, so that a search goes on from a journal
 * by being told its rows again.
 */
export interface RunSearch {
  /**
   * The values of the next batch of runs, numbered on from the runs before; null: the search is over. A pure function of the rows.
   *
   * @param rows all rows of the batches before, in the order of their numbers
   */
  readonly next: (rows: readonly SurveyRow[]) => readonly number[][] | null;
}
