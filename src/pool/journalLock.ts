import { linkSync, readFileSync, renameSync, unlinkSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import path from 'node:path';
import { accessError, JournalError } from './journalError.ts';

/** Locks of this process: tells its own from those of a process before it that had the same number. */
const held = new Set<string>();

const EXPECTED = 'a folder that can be written to';

/**
 * Keeps other processes off a file. A lock whose process has ended, on this computer, is taken over.
 *
 * @param file what is locked; the lock lies beside it and has its name with `.lock`
 * @returns what lifts the lock
 * @throws JournalError when another process is at work on the file
 */
export function lockFile(file: string): () => void {
  const lock = path.resolve(`${file}.lock`);
  if (!created(lock)) {
    removeStale(lock, file);
    if (!created(lock)) throw inUse(file, lock, 'another process');
  }
  held.add(lock);
  return () => {
    held.delete(lock);
    try {
      unlinkSync(lock);
    } catch {
      // It is gone: somebody cleared up. Nothing is left to lift.
    }
  };
}

function created(lock: string): boolean {
  try {
    writeFileSync(lock, `${JSON.stringify({ process: process.pid, computer: hostname() })}\n`, {
      flag: 'wx',
    });
    return true;
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return false;
    throw accessError(lock, error, EXPECTED);
  }
}

/** Moved away before it is looked at, so that of two processes that find it only one removes it. */
function removeStale(lock: string, file: string): void {
  const aside = `${lock}.${process.pid}`;
  try {
    renameSync(lock, aside);
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return;
    throw accessError(lock, error, EXPECTED);
  }
  const holder = holderOf(aside, lock);
  if (holder !== null) {
    try {
      linkSync(aside, lock);
    } catch (error) {
      if (codeOf(error) !== 'EEXIST') throw accessError(lock, error, EXPECTED);
    }
  }
  unlinkSync(aside);
  if (holder !== null) throw inUse(file, lock, holder);
}

/** Who holds a lock, in words; null when nobody does any more. */
function holderOf(aside: string, lock: string): string | null {
  let read: { readonly process?: unknown; readonly computer?: unknown };
  try {
    read = JSON.parse(readFileSync(aside, 'utf8')) ?? {};
  } catch {
    // Cut off while it was written: its process did not live to hold it.
    return null;
  }
  const { process: id, computer } = read;
  if (typeof id !== 'number' || typeof computer !== 'string') return null;
  if (computer !== hostname()) return `process ${id} on ${JSON.stringify(computer)}`;
  if (id === process.pid) return held.has(lock) ? 'this process' : null;
  return isAlive(id) ? `process ${id}` : null;
}

function isAlive(id: number): boolean {
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    return codeOf(error) === 'EPERM';
  }
}

function inUse(file: string, lock: string, holder: string): JournalError {
  return new JournalError(
    `${file}: ${holder} is at work on it; expected to be alone (if no survey is running there, remove ${lock})`,
  );
}

function codeOf(error: unknown): unknown {
  return error instanceof Error && 'code' in error ? error.code : undefined;
}
