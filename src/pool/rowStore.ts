import type { SurveyRow } from '../survey/spec/survey.ts';
import type { RowSource } from '../survey/spread/rowSource.ts';
import { ordinalOf, runsOfShard, type Shard } from './shard.ts';

/** Where the rows of a survey are kept while it is made. */
export interface RowStore {
  /** Runs that are there. */
  readonly done: number;
  /** Bytes taken on disk by the rows that were added since it was opened. */
  readonly bytesAdded: number;
  /** Whether the run with this number in the shard is there. */
  readonly has: (ordinal: number) => boolean;
  /** Takes finished runs of the shard that are not there yet, in any order. */
  readonly add: (rows: readonly SurveyRow[]) => void;
  /** Also after closing. */
  readonly rows: RowSource;
  readonly close: () => void;
}

/** Keeps rows in memory. */
export function memoryStore(shard: Shard, count: number): RowStore {
  const kept: (SurveyRow | undefined)[] = new Array(runsOfShard(shard, count));
  let done = 0;
  return {
    get done() {
      return done;
    },
    bytesAdded: 0,
    has: (ordinal) => kept[ordinal] !== undefined,
    add: (rows) => {
      for (const row of rows) kept[ordinalOf(shard, row.run)!] = row;
      done += rows.length;
    },
    rows: () => kept.filter((row) => row !== undefined),
    close: () => {},
  };
}
