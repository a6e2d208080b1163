import { randomUUID } from 'node:crypto';
import { constants, copyFileSync, linkSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import path from 'node:path';
import { accessError, JournalError } from './journalError.ts';

/** Locks of this process: tells its own from those of a process before it that had the same number. */
const held = new Set<string>();

const EXPECTED = 'a folder that can be written to';
/** How often a lock is tried for that is gone again whenever it is looked at. */
const ATTEMPTS = 5;
/** Age from which a lock that is not whole was left by a process that died while it wrote it, ms; writing takes far below one. */
const CUT_OFF_AFTER = 10_000;

/**
 * Keeps other processes off a file. A lock whose process has ended, on this computer, is taken over.
 *
 * @param file what is locked; the lock lies beside it and has its name with `.lock`
 * @returns what lifts the lock
 * @throws JournalError when another process is at work on the file
 */
export function lockFile(file: string): () => void {
  const lock = path.resolve(`${file}.lock`);
  const text = `${JSON.stringify({ process: process.pid, computer: hostname() })}\n`;
  const draft = `${lock}.${randomUUID()}`;
  try {
    writeFileSync(draft, text, { flag: 'wx' });
    take(lock, draft, file);
  } catch (error) {
    throw error instanceof JournalError ? error : accessError(lock, error, EXPECTED);
  } finally {
    rmSync(draft, { force: true });
  }
  return () => lift(lock, text);
}

/** Puts a lock in its place, which is free or becomes so. */
function take(lock: string, draft: string, file: string): void {
  for (let attempt = 0; attempt < ATTEMPTS; attempt += 1) {
    if (put(draft, lock)) {
      held.add(lock);
      return;
    }
    const holder = holderOf(lock);
    if (holder !== null && holder !== undefined) throw inUse(file, lock, holder);
    if (holder === null) removeAbandoned(lock, draft, file);
  }
  throw inUse(file, lock, SOMEBODY);
}

/** Whole from the first instant, and only where nothing is: false where something is. */
function put(draft: string, lock: string): boolean {
  try {
    linkSync(draft, lock);
    return true;
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return false;
  }
  // A disk without links: not whole for an instant, which is why a young lock that is cut off counts as held.
  try {
    copyFileSync(draft, lock, constants.COPYFILE_EXCL);
    return true;
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return false;
    throw error;
  }
}

/**
 * Removes a lock that nobody holds any more. Of several processes that find it only the one whose turn it is may: another could
 * have removed it since, and what lies there be the lock of a third. The turn is a lock as well, and is itself taken over where a
 * process died in its turn.
 */
function removeAbandoned(lock: string, draft: string, file: string): void {
  const turn = `${lock}.turn`;
  take(turn, draft, file);
  try {
    if (holderOf(lock) === null) rmSync(lock);
  } finally {
    held.delete(turn);
    rmSync(turn, { force: true });
  }
}

/** Removes the own lock; one that another process has put there since somebody removed it stays. */
function lift(lock: string, text: string): void {
  held.delete(lock);
  try {
    if (readFileSync(lock, 'utf8') === text) rmSync(lock);
  } catch {
    // It is gone: somebody cleared up. Nothing is left to lift.
  }
}

/** Who holds a lock; null when nobody does any more, undefined where there is none. */
function holderOf(lock: string): Holder | null | undefined {
  try {
    const text = readFileSync(lock, 'utf8');
    return holderIn(text, lock) ?? (isYoung(text, lock) ? SOMEBODY : null);
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return undefined;
    throw error;
  }
}

interface Holder {
  /** In words. */
  readonly name: string;
  /** On another computer: whether it lives cannot be found out. */
  readonly isFar: boolean;
}

const SOMEBODY: Holder = { name: 'another process', isFar: false };

interface LockContent {
  readonly process: number;
  readonly computer: string;
}

function holderIn(text: string, lock: string): Holder | null {
  const read = contentOf(text);
  if (read === null) return null;
  const { process: id, computer } = read;
  if (computer !== hostname()) return { name: `process ${id} on ${JSON.stringify(computer)}`, isFar: true };
  if (id === process.pid) return held.has(lock) ? { name: 'this process', isFar: false } : null;
  return isAlive(id) ? { name: `process ${id}`, isFar: false } : null;
}

/** Null where a lock is not whole. */
function contentOf(text: string): LockContent | null {
  try {
    const { process: id, computer } = JSON.parse(text);
    return typeof id === 'number' && typeof computer === 'string' ? { process: id, computer } : null;
  } catch {
    return null;
  }
}

/** Whether a lock is not whole and may still be in writing. */
function isYoung(text: string, lock: string): boolean {
  return contentOf(text) === null && Date.now() - statSync(lock).mtimeMs < CUT_OFF_AFTER;
}

function isAlive(id: number): boolean {
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    return codeOf(error) === 'EPERM';
  }
}

function inUse(file: string, lock: string, { name, isFar }: Holder): JournalError {
  const doubt = isFar
    ? 'whether it still runs cannot be seen from here; if it does not'
    : 'if no survey is running there';
  return new JournalError(
    `${file}: ${name} is at work on it; expected to be alone (${doubt}, remove ${lock})`,
  );
}

function codeOf(error: unknown): unknown {
  return error instanceof Error && 'code' in error ? error.code : undefined;
}
