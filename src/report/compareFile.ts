import type { CriterionKey, Outcome } from '../assess/criterion.ts';
import type { Verdict } from '../assess/verdict.ts';
import type { MetricKey } from '../measure/metric.ts';
import type { DifferingInput } from './differingInputs.ts';

/** Version of the format below. Additions keep it; a change of meaning or a removal raises it. */
export const COMPARE_VERSION = 1;

/** What `compare --json` prints. All values are SI, temperatures °C; a number that does not exist is null, with its reason. */
export interface CompareFile {
  /** Version of this format. */
  readonly compareVersion: typeof COMPARE_VERSION;
  /** The program that made the file. */
  readonly program: { readonly name: 'countertorque'; readonly version: string };
  readonly a: ComparedHead;
  readonly b: ComparedHead;
  /** Inputs that differ, as written or filled in. */
  readonly inputs: readonly DifferingInput[];
  /** Every metric of both runs. */
  readonly metrics: Readonly<
    Record<MetricKey, { readonly unit: string; readonly a: ComparedNumber; readonly b: ComparedNumber }>
  >;
  readonly criteria: readonly {
    readonly key: CriterionKey;
    readonly unit: string;
    readonly a: ComparedCriterion;
    readonly b: ComparedCriterion;
  }[];
}

/** Which scenario, and what came of it. */
export interface ComparedHead {
  /** Name of the file as given. */
  readonly file: string;
  readonly title: string;
  /** False when the run's figures must not be used as they stand. */
  readonly usable: boolean;
  readonly verdict: Verdict;
}

/** A number, or why there is none. */
export interface ComparedNumber {
  readonly value: number | null;
  readonly missing: string | null;
}

/** A criterion in one of the two. */
export interface ComparedCriterion extends ComparedNumber {
  readonly limit: number | null;
  readonly margin: number | null;
  readonly outcome: Outcome;
}
