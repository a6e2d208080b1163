import type { RowVerdict } from '../spec/survey.ts';

/** How often each outcome came, and what decided. */
export interface VerdictCounts {
  /** Number of rows with this outcome. */
  readonly suitable: number;
  /** Number of rows with this outcome. */
  readonly notSuitable: number;
  /** Number of rows with this outcome. */
  readonly notJudged: number;
  /** Rows without a verdict. */
  readonly none: number;
  /** Criteria that decided, the one against most runs first. A run may have several. */
  readonly decisive: readonly DecisiveCount[];
}

/**
 * In how many runs of each outcome a criterion decided; of a run that is suitable it is the one with the
 * smallest margin.
 */
export interface DecisiveCount {
  /** Key of the criterion. */
  readonly criterion: string;
  /** Number of runs with this outcome in which it decided. */
  readonly suitable: number;
  /** Number of runs with this outcome in which it decided. */
  readonly notSuitable: number;
  /** Number of runs with this outcome in which it decided. */
  readonly notJudged: number;
}

/** Takes verdicts one by one; memory grows with the number of criteria alone. */
export interface VerdictTaker {
  readonly take: (verdict: RowVerdict | null) => void;
  readonly result: () => VerdictCounts;
}

/** Counts outcomes and decisive criteria. */
export function verdictCounts(): VerdictTaker {
  const outcomes = { suitable: 0, notSuitable: 0, notJudged: 0 };
  const decisive = new Map<string, Record<RowVerdict['outcome'], number>>();
  let none = 0;
  return {
    take: (verdict) => {
      if (verdict === null) {
        none++;
        return;
      }
      outcomes[verdict.outcome]++;
      for (const criterion of verdict.decisive.split(' ').filter((key) => key !== '')) {
        const counts = decisive.get(criterion) ?? { suitable: 0, notSuitable: 0, notJudged: 0 };
        counts[verdict.outcome]++;
        decisive.set(criterion, counts);
      }
    },
    result: () => ({
      ...outcomes,
      none,
      decisive: [...decisive]
        .map(([criterion, counts]) => ({ criterion, ...counts }))
        .sort(
          (a, b) => b.notSuitable - a.notSuitable || b.notJudged - a.notJudged || b.suitable - a.suitable,
        ),
    }),
  };
}
