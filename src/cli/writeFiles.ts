import { closeSync, existsSync, mkdirSync, openSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { InputError, reasonOf } from './inputError.ts';
import type { CliIo } from './io.ts';

/** One file of a folder. */
export interface OutputFile {
  /** Path inside the folder, with forward slashes. */
  readonly name: string;
  /** Pieces are written one after another, as they are made. */
  readonly content: string | Iterable<string> | Iterable<Uint8Array>;
}

/** Folder that reports go to, below the working folder. */
const REPORTS = 'reports';

/**
 * Folder for what a scenario file gives: its name without the ending below `reports`, or `report` where nothing usable is
 * left of the name.
 */
export function reportFolder(file: string): string {
  const { name } = path.parse(file);
  return path.join(REPORTS, /^\.*$/.test(name) ? 'report' : name);
}

/**
 * Writes files into a folder, which is made if need be.
 *
 * @throws InputError with the file and the reason
 */
export function writeFiles(folder: string, files: readonly OutputFile[], io: CliIo): void {
  for (const { name, content } of files) {
    const full = path.resolve(io.cwd, folder, ...name.split('/'));
    try {
      makeFolder(path.dirname(full));
      if (typeof content === 'string') writeFileSync(full, content);
      else writePieces(full, content);
    } catch (error) {
      // What fails while a piece is made is not the folder's fault.
      if (!(error instanceof Error && 'code' in error)) throw error;
      throw new InputError(
        `${full}: ${reasonOf(error)}; expected a folder that can be written to (--out DIR)`,
      );
    }
  }
}

/** Folder by folder from the top: Node's own way to make several at once never ends below a file system that refuses, such as /proc. */
function makeFolder(folder: string): void {
  if (existsSync(folder)) return;
  const parent = path.dirname(folder);
  if (parent !== folder) makeFolder(parent);
  mkdirSync(folder);
}

function writePieces(full: string, pieces: Iterable<string | Uint8Array>): void {
  const file = openSync(full, 'w');
  try {
    for (const piece of pieces) writeFileSync(file, piece);
  } finally {
    closeSync(file);
  }
}
