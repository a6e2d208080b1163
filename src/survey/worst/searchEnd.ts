import type { Survey, SurveyRow } from '../spec/survey.ts';
import type { Stage } from './searchPlan.ts';
import { worstSearch } from './worstSearch.ts';

/**
 * How a search ended: `rest`, by its own criterion; otherwise its runs were used up while it
 *
 * - `exploring`: still spread its runs over the ranges,
 * - `descending`: still followed the metric down from the best of those,
 * - `polishing`: still closed in on the best of all,
 * - `exploring on`: had closed in on the best, and looked elsewhere with the runs that were left.
 */
export type SearchEnd = Stage;

/**
 * How the search ended that made the rows; it is gone through once more.
 *
 * @param rows all rows of a worst-case survey, in any order
 * @returns null where they are not, or not all, the rows of this search
 */
export function searchEndOf(survey: Survey, rows: readonly SurveyRow[]): SearchEnd | null {
  try {
    const search = worstSearch(survey);
    const all = rows.toSorted((a, b) => a.run - b.run);
    return search.next(all) === null ? search.stageAfter(all) : null;
  } catch (error) {
    // What the search refuses: rows that it did not ask for.
    if (error instanceof RangeError) return null;
    throw error;
  }
}
