import type { RowVerdict } from '../spec/survey.ts';

/** How the verdict goes along the first field at one value of the second. */
export interface VerdictLine {
  /** Value of the second field, in its unit. */
  readonly at: number;
  /** The smallest value of the first field whose verdict is "suitable", in its unit; null where none is. */
  readonly smallestSuitable: number | null;
  /** The largest such value, in its unit; null where none is. */
  readonly largestSuitable: number | null;
  /** Every change of the verdict, the first field going up. Where only one side is suitable there is one. */
  readonly changes: readonly VerdictChange[];
  /** Number of cells without a verdict. A change beside one lies between the nearest cells with a verdict. */
  readonly missing: number;
}

/** Between two values of the first field the verdict changes. */
export interface VerdictChange {
  /** Value before the change, in the unit of the first field. */
  readonly from: number;
  /** Value after the change, in the unit of the first field. */
  readonly to: number;
  readonly before: RowVerdict;
  readonly after: RowVerdict;
}

/**
 * @param at value of the second field
 * @param values values of the first field, in any order
 * @param verdicts the verdict at each; null where there is none
 */
export function verdictLine(
  at: number,
  values: readonly number[],
  verdicts: readonly (RowVerdict | null)[],
): VerdictLine {
  const judged = values
    .map((value, i) => ({ value, verdict: verdicts[i] ?? null }))
    .sort((a, b) => a.value - b.value)
    .flatMap(({ value, verdict }) => (verdict === null ? [] : [{ value, verdict }]));
  const suitable = judged.filter(({ verdict }) => verdict.outcome === 'suitable');
  const changes = judged.slice(1).flatMap(({ value, verdict }, i): VerdictChange[] => {
    const { value: from, verdict: before } = judged[i]!;
    return before.outcome === verdict.outcome ? [] : [{ from, to: value, before, after: verdict }];
  });
  return {
    at,
    smallestSuitable: suitable[0]?.value ?? null,
    largestSuitable: suitable.at(-1)?.value ?? null,
    changes,
    missing: values.length - judged.length,
  };
}
