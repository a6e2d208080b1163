import type { PublishedSource } from './published.ts';
import { errorInTolerances, expectWithin, type Tolerance } from './tolerance.ts';

/** One of many comparisons of which the guide shows only the worst. */
export interface Comparison {
  readonly ours: number;
  readonly published: number;
  readonly tolerance: Tolerance;
  /** As in `PublishedSource.compare`. */
  readonly quantity: string;
  readonly unit: string;
}

/** Error as a share of the source's number, as the guide prints it; no such number may be zero. */
export const relativeError = ({ ours, published }: Comparison) => Math.abs((ours - published) / published);

/** Error in units of what is allowed: for numbers that pass through zero. */
export const allowedError = ({ ours, published, tolerance }: Comparison) =>
  errorInTolerances(ours, published, tolerance);

/**
 * Demands every comparison and gives the one with the largest error.
 *
 * @throws Error as `expectWithin`; also for an empty list
 */
export function worstOf(
  comparisons: readonly Comparison[],
  errorOf: (comparison: Comparison) => number,
): Comparison {
  for (const { ours, published, tolerance, quantity } of comparisons)
    expectWithin(ours, published, tolerance, quantity);
  return comparisons.reduce((worst, next) => (errorOf(next) > errorOf(worst) ? next : worst));
}

/** What a test compares beside what it lists row by row. */
export interface OtherComparisons {
  /** Takes the same arguments as `PublishedSource.compare`; demands at once and lists nothing. */
  demand(ours: number, published: number, tolerance: Tolerance, quantity: string, unit: string): void;
  /**
   * Lists of each unit the comparison that is off most as a share of the source's number.
   *
   * @returns how many comparisons there are in all
   */
  listWorst(compare: PublishedSource['compare']): number;
}

export function otherComparisons(): OtherComparisons {
  const all: Comparison[] = [];
  return {
    demand(ours, published, tolerance, quantity, unit) {
      expectWithin(ours, published, tolerance, quantity);
      all.push({ ours, published, tolerance, quantity, unit });
    },
    listWorst(compare) {
      for (const unit of new Set(all.map((comparison) => comparison.unit))) {
        const alike = all.filter((comparison) => comparison.unit === unit);
        const { ours, published, tolerance, quantity } = worstOf(alike, relativeError);
        compare(ours, published, tolerance, quantity, unit);
      }
      return all.length;
    },
  };
}
