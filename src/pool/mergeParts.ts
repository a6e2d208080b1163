import { JournalError } from './journalError.ts';
import { differences } from './journalHeader.ts';
import type { JournalScan } from './journalScan.ts';
import { runAt, shardText } from './shard.ts';

/** Missing shards that are named one by one. */
const NAMED = 10;

/** One part of a survey that is to be joined. */
export interface MergePart extends JournalScan {
  readonly name: string;
}

/**
 * Makes sure that parts are all shards of one survey, each there once and finished.
 *
 * @throws JournalError with everything that is wrong, one line each
 */
export function assertParts(parts: readonly MergePart[]): void {
  const [first] = parts;
  if (first === undefined) throw new JournalError('nothing to merge; expected the folders of all shards');
  const wrong = parts.flatMap((part) => mixed(part, first));
  if (wrong.length === 0) {
    wrong.push(
      ...parts.flatMap(unfinished),
      ...parts.flatMap((part, index) => twice(part, parts.slice(0, index))),
    );
    wrong.push(...absent(parts));
  }
  if (wrong.length > 0) throw new JournalError(wrong.join('\n'));
}

function mixed({ name, header }: MergePart, first: MergePart): string[] {
  const { of } = first.header.shard;
  const other = differences(header, { ...first.header, shard: header.shard });
  if (header.shard.of !== of)
    other.push(`it is of shard ${shardText(header.shard)}, one of ${header.shard.of} parts, not of ${of}`);
  return other.length === 0
    ? []
    : [`${name}: ${other.join('; ')}; expected a part of the same survey as ${first.name}`];
}

function unfinished({ name, header, offsets, done }: MergePart): string[] {
  if (header.survey.task.kind === 'worst')
    return [`${name}: a search has no parts to join; expected its own folder, which has its tables`];
  const missing = offsets.length - done;
  if (missing === 0) return [];
  const run = runAt(header.shard, offsets.indexOf(0));
  return [
    `${name}: ${missing} of ${offsets.length} runs of shard ${shardText(header.shard)} are missing, run ${run} the first; expected a finished part (the same command goes on with it)`,
  ];
}

function twice({ name, header }: MergePart, before: readonly MergePart[]): string[] {
  const same = before.find((part) => part.header.shard.index === header.shard.index);
  return same === undefined
    ? []
    : [`${name}: shard ${shardText(header.shard)} is in ${same.name} already; expected each part once`];
}

function absent(parts: readonly MergePart[]): string[] {
  const { shard, count } = parts[0]!.header;
  const there = new Set(parts.map(({ header }) => header.shard.index));
  // A part without runs lacks nothing, but its folder was meant to be named all the same.
  const list = Array.from({ length: shard.of }, (_, index) => index).filter((index) => !there.has(index));
  if (list.length === 0) return [];
  const first = list.slice(0, NAMED).map((index) => shardText({ index, of: shard.of }));
  const names = [...first, ...(list.length > NAMED ? [`and ${list.length - NAMED} more`] : [])].join(', ');
  return [
    `shard ${names} of ${count} runs ${list.length === 1 ? 'is' : 'are'} missing; expected the folders of all ${shard.of}`,
  ];
}
