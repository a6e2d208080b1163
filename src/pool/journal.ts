import {
  closeSync,
  fstatSync,
  fsyncSync,
  ftruncateSync,
  mkdirSync,
  openSync,
  readFileSync,
  statSync,
  writeSync,
} from 'node:fs';
import path from 'node:path';
import { lineOfRow } from '../recording/journalLine.ts';
import type { SurveyRow } from '../survey/spec/survey.ts';
import { accessError, BEGIN_ANEW, JournalError } from './journalError.ts';
import { differences, type JournalHeader, lineOfHeader } from './journalHeader.ts';
import { lockFile } from './journalLock.ts';
import { journalRows } from './journalRows.ts';
import { type JournalScan, scanJournal } from './journalScan.ts';
import type { RowStore } from './rowStore.ts';
import { ordinalOf, runsOfShard } from './shard.ts';

/** Name of a journal in its folder. */
export const JOURNAL_NAME = 'runs.journal';

const WRITABLE = 'a folder that can be written to, with room on its disk';
const WAYS_OUT = `the same survey, ${BEGIN_ANEW}`;

/** How a journal is opened. */
export interface JournalOptions {
  /** Rows that are already there are thrown away. */
  readonly fresh?: boolean;
  /** What is wrong with a row that is already there, in words; null where nothing is. */
  readonly faultOf?: (row: SurveyRow) => string | null;
}

/**
 * Opens the journal of a survey, to begin it or to go on with what is there. A line that a stopped process left unfinished is cut off.
 *
 * @param name path of the file; its folder is made if need be
 * @throws JournalError when another process is at work on it, it belongs to another survey, is damaged or cannot be written
 */
export function openJournal(name: string, header: JournalHeader, options: JournalOptions = {}): RowStore {
  try {
    mkdirSync(path.dirname(path.resolve(name)), { recursive: true });
  } catch (error) {
    throw accessError(name, error, WRITABLE);
  }
  const unlock = lockFile(name);
  try {
    const found = options.fresh === true ? null : scannedBefore(name, header, options);
    return store(name, header, found, unlock);
  } catch (error) {
    unlock();
    throw error;
  }
}

/** What an earlier process left; null where that is nothing. */
function scannedBefore(name: string, header: JournalHeader, { faultOf }: JournalOptions): JournalScan | null {
  if (statSync(name, { throwIfNoEntry: false }) === undefined) return null;
  const scan = scanJournal(
    name,
    (found) => {
      const other = differences(found, header);
      if (other.length > 0) throw new JournalError(`${name}: ${other.join('; ')}; expected ${WAYS_OUT}`);
    },
    (row, line) => {
      const fault = faultOf?.(row) ?? null;
      if (fault !== null) throw new JournalError(`${name}:${line}: ${fault}; expected ${WAYS_OUT}`);
    },
  );
  // Stopped within its first line, which then is the beginning of the one it would be given now.
  if (scan === null && !lineOfHeader(header).startsWith(readFileSync(name, 'utf8')))
    throw new JournalError(`${name}: it is no journal of a survey; expected ${WAYS_OUT}`);
  return scan;
}

function store(name: string, header: JournalHeader, found: JournalScan | null, unlock: () => void): RowStore {
  const { shard, count, survey } = header;
  const offsets = found?.offsets ?? new Float64Array(runsOfShard(shard, count));
  let done = found?.done ?? 0;
  let end = found?.end ?? 0;
  let bytesAdded = 0;
  const file = openedAt(name, end);
  const append = (text: string) => {
    assertInPlace(file, name);
    end = appended(file, name, text, end);
  };
  if (found === null) append(`${lineOfHeader(header)}\n`);
  return {
    get done() {
      return done;
    },
    get bytesAdded() {
      return bytesAdded;
    },
    has: (ordinal) => offsets[ordinal]! > 0,
    add: (rows) => {
      const lines = rows.map((row) => `${lineOfRow(row)}\n`);
      let at = end;
      append(lines.join(''));
      bytesAdded += end - at;
      rows.forEach((row, index) => {
        offsets[ordinalOf(shard, row.run)!] = at;
        at += Buffer.byteLength(lines[index]!);
      });
      done += rows.length;
    },
    rows: () => journalRows(name, offsets, survey),
    close: () => {
      try {
        assertInPlace(file, name);
        synced(file, name);
      } finally {
        closeSync(file);
        unlock();
      }
    },
  };
}

/** Opens for appending and cuts off what follows the last whole line. */
function openedAt(name: string, end: number): number {
  try {
    const file = openSync(name, 'a');
    ftruncateSync(file, end);
    return file;
  } catch (error) {
    throw accessError(name, error, WRITABLE);
  }
}

/**
 * Makes sure that what is written can be found again: the system goes on writing into a file that was removed.
 *
 * @throws JournalError
 */
function assertInPlace(file: number, name: string): void {
  // Whole numbers: those of some disks are larger than a double holds.
  const own = fstatSync(file, { bigint: true });
  const there = statSync(name, { bigint: true, throwIfNoEntry: false });
  if (there?.ino === own.ino && there.dev === own.dev) return;
  throw new JournalError(
    `${name}: it was removed, moved or replaced while it was written; expected to be left alone (the same command makes the runs that are not there)`,
  );
}

/** To the disk itself. */
function synced(file: number, name: string): void {
  try {
    fsyncSync(file);
  } catch (error) {
    throw accessError(name, error, WRITABLE);
  }
}

/** One write where the system lets it be one; what a full disk has left of it is taken back. */
function appended(file: number, name: string, text: string, end: number): number {
  const bytes = Buffer.from(text);
  try {
    for (let written = 0; written < bytes.length; ) written += writeSync(file, bytes, written);
  } catch (error) {
    ftruncateSync(file, end);
    throw accessError(name, error, WRITABLE);
  }
  return end + bytes.length;
}
