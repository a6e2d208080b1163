import { closeSync, existsSync, mkdirSync, openSync, renameSync, writeSync } from 'node:fs';
import path from 'node:path';
import type { Survey } from '../survey/spec/survey.ts';
import type { RowSource } from '../survey/spread/rowSource.ts';
import { BlockReader } from './blockReader.ts';
import { accessError, JournalError } from './journalError.ts';
import { type JournalHeader, lineOfHeader } from './journalHeader.ts';
import { lockFile } from './journalLock.ts';
import { journalRows } from './journalRows.ts';
import { scanJournal } from './journalScan.ts';
import { assertParts, type MergePart } from './mergeParts.ts';
import { readPart } from './readPart.ts';
import { ordinalOf, WHOLE } from './shard.ts';

/** Bytes collected before they are written. */
const PIECE = 1_000_000;

/** A survey whose shards were joined. */
export interface MergedSurvey {
  readonly survey: Survey;
  readonly rows: RowSource;
  /** Number of runs of the whole survey. */
  readonly total: number;
}

/**
 * Joins the journals of all shards of one survey to the journal that one process would have written, its rows in order.
 *
 * @param parts paths of journals, in any order
 * @param target path of the joined journal; its folder is made if need be
 * @throws JournalError when a part is damaged, not finished, missing, twice there, of another survey or has rows of one, or
 * the target is taken
 * @throws TypeError, RangeError as `runList` does of the survey in the first line of a part
 */
export function mergeJournals(parts: readonly string[], target: string): MergedSurvey {
  const read = parts.map(readPart);
  assertParts(read);
  const header: JournalHeader = { ...read[0]!.header, shard: WHOLE };
  try {
    mkdirSync(path.dirname(path.resolve(target)), { recursive: true });
  } catch (error) {
    throw accessError(target, error, 'a folder that can be written to (--out DIR)');
  }
  const unlock = lockFile(target);
  try {
    assertFree(target, header);
    const offsets = written(read, header, target);
    return {
      survey: header.survey,
      rows: () => journalRows(target, offsets, header.survey),
      total: header.count,
    };
  } finally {
    unlock();
  }
}

/** The same merge may be done again; anything else that stands there is not lost. */
function assertFree(target: string, header: JournalHeader): void {
  if (!existsSync(target)) return;
  const there = scanJournal(target)?.header;
  if (there?.fingerprint !== header.fingerprint || there.shard.of !== 1)
    throw new JournalError(`${target}: another journal stands there; expected another folder (--out DIR)`);
}

/** Copies line by line into a file aside, which takes the target's place when it is whole. */
function written(parts: readonly MergePart[], header: JournalHeader, target: string): Float64Array {
  const offsets = new Float64Array(header.count);
  const aside = `${target}.part`;
  const open: number[] = [];
  const opened = (name: string, flag: string) => {
    const file = openSync(name, flag);
    open.push(file);
    return file;
  };
  try {
    const output = opened(aside, 'w');
    const sources = parts.map(({ name, ...part }) => ({
      ...part,
      reader: new BlockReader(opened(name, 'r')),
    }));
    const byShard = sources.toSorted((a, b) => a.header.shard.index - b.header.shard.index);
    let piece = `${lineOfHeader(header)}\n`;
    let end = Buffer.byteLength(piece);
    const flush = () => {
      const bytes = Buffer.from(piece);
      for (let at = 0; at < bytes.length; ) at += writeSync(output, bytes, at);
      piece = '';
    };
    for (let run = 0; run < header.count; run += 1) {
      const source = byShard[run % byShard.length]!;
      const line = `${source.reader.line(source.offsets[ordinalOf(source.header.shard, run)!]!)}\n`;
      offsets[run] = end;
      end += Buffer.byteLength(line);
      piece += line;
      if (piece.length >= PIECE) flush();
    }
    flush();
    renameSync(aside, target);
    return offsets;
  } catch (error) {
    throw accessError(target, error, 'a folder that can be written to, with room on its disk');
  } finally {
    for (const file of open) closeSync(file);
  }
}
