import type { Survey, SurveyRow } from '../spec/survey.ts';
import { objectiveOf } from './objective.ts';

/** What a worst-case survey has found. */
export interface FoundExtreme {
  readonly row: SurveyRow;
  /** The metric in that row, SI. */
  readonly value: number;
  /** The first run that could be used and every run that came nearer to what is sought than all before it. */
  readonly history: readonly { readonly run: number; readonly value: number }[];
}

/**
 * The extreme among the rows of a worst-case survey; of equal ones the one with the lowest number.
 *
 * @param rows in any order
 * @returns null where no row can be used
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
  return best === null ? null : { row: best, value: history.at(-1)!.value, history };
}
