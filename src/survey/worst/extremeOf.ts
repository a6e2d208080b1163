import type { Survey, SurveyRow } from '../spec/survey.ts';
import { objectiveOf } from './objective.ts';
import { risingEdges } from './risingEdges.ts';
import { type SearchEnd, searchEndOf } from './searchEnd.ts';

/** What a worst-case survey has found. */
export interface FoundExtreme {
  readonly row: SurveyRow;
  /** The metric in that row, SI. */
  readonly value: number;
  /**
   * The first run that could be used and every run that came nearer to what is sought than all before it: number of the
   * `run`, and `value` of the metric, SI.
   */
  readonly history: readonly { readonly run: number; readonly value: number }[];
  /** Null where the rows are not, or not all, those of a search. */
  readonly end: SearchEnd | null;
  /** Numbers of the fields at whose edge it is and beyond whose edge, by the rows near it, may be worse. */
  readonly risingEdges: readonly number[];
}

/**
 * The extreme among the rows of a worst-case survey; of equal ones the one with the lowest number.
 *
 * @param rows in any order
 * @returns null where no row can be used
 * @throws RangeError when the survey asks something else or does not take its metric down
 */
export function extremeOf(survey: Survey, rows: readonly SurveyRow[]): FoundExtreme | null {
  const { costOf, usable } = objectiveOf(survey);
  const history: { run: number; value: number }[] = [];
  let best: SurveyRow | null = null;
  for (const row of rows.toSorted((a, b) => a.run - b.run)) {
    const value = usable(row);
    if (value === null || (best !== null && !(costOf(row) < costOf(best)))) continue;
    best = row;
    history.push({ run: row.run, value });
  }
  if (best === null) return null;
  return {
    row: best,
    value: history.at(-1)!.value,
    history,
    end: searchEndOf(survey, rows),
    risingEdges: risingEdges(survey, rows, best),
  };
}
