import type { RunList, VariedField } from '../spec/survey.ts';
import { isListed, type ListedSpread, listedCount, listedValue } from './listed.ts';

/** 2^53: up to here every number of a run is exact. */
export const MOST_RUNS = 9_007_199_254_740_992;

/**
 * Every combination of the fields' lists, the last field changing fastest.
 *
 * @throws TypeError when a field has a distribution in place of a list
 * @throws RangeError when there are more than 2^53 combinations
 */
export function combinations(fields: readonly VariedField[]): RunList {
  const lists = fields.map(listOf);
  let count = 1;
  for (const list of lists) {
    // Compared before it is multiplied: just above 2^53 a product may be rounded down to it.
    if (listedCount(list) > Math.floor(MOST_RUNS / count))
      throw new RangeError(
        `more than ${MOST_RUNS} combinations (2^53): shorter lists or fewer fields would be right`,
      );
    count *= listedCount(list);
  }
  return {
    count,
    valuesOf: (run) => {
      const values: number[] = [];
      let rest = run;
      for (const list of lists.toReversed()) {
        const index = rest % listedCount(list);
        rest = (rest - index) / listedCount(list);
        values.push(listedValue(list, index));
      }
      return values.reverse();
    },
  };
}

/** The field's list. */
function listOf({ path, spread }: VariedField): ListedSpread {
  if (isListed(spread)) return spread;
  throw new TypeError(`${path}: every combination needs a list or a grid, not a ${spread.kind} distribution`);
}
