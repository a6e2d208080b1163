import type { RowStatus } from '../spec/survey.ts';

/** Rows that cannot be used for the same reason, numbers aside. */
export interface ReasonGroup {
  readonly status: RowStatus;
  /** The reason with every number replaced by `#`. */
  readonly pattern: string;
  /** The reason as it stands in the first of the rows. */
  readonly example: string;
  /** Number of that run. */
  readonly firstRun: number;
  readonly count: number;
}

/** Why rows cannot be used. */
export interface Reasons {
  /** The most frequent first; of equally frequent ones the one that came first. */
  readonly groups: readonly ReasonGroup[];
  /** Rows with other reasons. */
  readonly others: number;
}

/** Takes reasons one by one and keeps a bounded number of groups. */
export interface ReasonTaker {
  readonly take: (run: number, status: RowStatus, reason: string) => void;
  readonly result: () => Reasons;
}

/** Groups that are shown. */
const SHOWN = 12;
/**
 * Groups that are counted; later ones go to the others. Reasons are sentences of the project, far fewer than
 * this.
 */
const COUNTED = 500;
/** What takes the place of a number. */
const PLACEHOLDER = '#';
/** A number with its sign, if it stands apart, decimals and power of ten. */
const NUMBER = /(?<!\S)[-−+]?\d+(?:[.,]\d+)*(?:e[-+]?\d+)?|\d+(?:[.,]\d+)*(?:e[-+]?\d+)?/giu;

/** Groups reasons that differ in their numbers alone. */
export function reasons(): ReasonTaker {
  const groups = new Map<string, { -readonly [key in keyof ReasonGroup]: ReasonGroup[key] }>();
  let others = 0;
  return {
    take: (run, status, reason) => {
      const pattern = reason.replaceAll(NUMBER, PLACEHOLDER);
      const key = `${status} ${pattern}`;
      const group = groups.get(key);
      if (group !== undefined) group.count++;
      else if (groups.size < COUNTED)
        groups.set(key, { status, pattern, example: reason, firstRun: run, count: 1 });
      else others++;
    },
    result: () => {
      const sorted = [...groups.values()].sort((a, b) => b.count - a.count);
      const rest = sorted.slice(SHOWN).reduce((sum, { count }) => sum + count, others);
      return { groups: sorted.slice(0, SHOWN), others: rest };
    },
  };
}
