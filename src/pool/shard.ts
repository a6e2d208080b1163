/** One of several parts that a survey's runs are dealt out to: run k belongs to shard k mod `of`, so that each spans the list. */
export interface Shard {
  /** Number of this shard, from 0, below `of`. */
  readonly index: number;
  /** Number of shards, at least 1. */
  readonly of: number;
}

/** All runs in one part. */
export const WHOLE: Shard = { index: 0, of: 1 };

/** How many of `count` runs a shard has. */
export function runsOfShard({ index, of }: Shard, count: number): number {
  return index < count ? Math.floor((count - 1 - index) / of) + 1 : 0;
}

/** Number in the survey of a shard's run, which has the number `ordinal` (from 0) in the shard. */
export function runAt({ index, of }: Shard, ordinal: number): number {
  return index + ordinal * of;
}

/** Number in the shard of a run of the survey; null where the run belongs to another shard. */
export function ordinalOf({ index, of }: Shard, run: number): number | null {
  return run % of === index ? (run - index) / of : null;
}

/** As people write it: `2/8`. */
export function shardText({ index, of }: Shard): string {
  return `${index + 1}/${of}`;
}
