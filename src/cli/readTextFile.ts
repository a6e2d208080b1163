import { readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { InputError, reasonOf } from './inputError.ts';
import type { CliIo } from './io.ts';

/** What a file is read as. */
export interface TextFileLimits {
  /** Files above this are refused unread, bytes. */
  readonly largest: number;
  /** "scenario" */
  readonly what: string;
  /** What the file should be: "a scenario file (YAML or JSON)". */
  readonly expected: string;
}

/**
 * Reads a text file.
 *
 * @param file path, relative to the working folder
 * @throws InputError with the file, the reason and what was expected
 */
export function readTextFile(file: string, { largest, what, expected }: TextFileLimits, io: CliIo): string {
  const full = path.resolve(io.cwd, file);
  try {
    const stat = statSync(full);
    if (stat.isDirectory()) throw new InputError(`${file}: it is a folder; expected ${expected}`);
    // A device may never end.
    if (!stat.isFile() && !stat.isFIFO())
      throw new InputError(`${file}: it is no file; expected ${expected}`);
    if (stat.size > largest)
      throw new InputError(
        `${file}: ${(stat.size / 1e6).toFixed(1)} MB is no ${what}; expected at most ${largest / 1e6} MB`,
      );
    return readFileSync(full, 'utf8');
  } catch (error) {
    if (error instanceof InputError) throw error;
    throw new InputError(`${file}: ${reasonOf(error)}; expected ${expected}`);
  }
}
