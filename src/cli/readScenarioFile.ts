import { readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { parseScenarioWithOrigins } from '../estimate/parseScenarioWithOrigins.ts';
import type { ScenarioWithOrigins } from '../scenario/resolveScenario.ts';
import { InputError, reasonOf } from './inputError.ts';
import type { CliIo } from './io.ts';

/** A scenario with the text it was read from. */
export interface ScenarioFile extends ScenarioWithOrigins {
  readonly fileName: string;
  readonly source: string;
}

/** Files above this are refused unread, bytes; a long scenario has a few kilobytes. */
const LARGEST_FILE = 1_000_000;

const EXPECTED = 'expected a scenario file (YAML or JSON)';

/**
 * Reads and checks a scenario file.
 *
 * @param file path, relative to the working folder
 * @throws InputError when the file cannot be read; ScenarioError when it cannot be used
 */
export function readScenarioFile(file: string, io: CliIo): ScenarioFile {
  const full = path.resolve(io.cwd, file);
  let source: string;
  try {
    const stat = statSync(full);
    if (stat.isDirectory()) throw new InputError(`${file}: it is a folder; ${EXPECTED}`);
    // A device may never end.
    if (!stat.isFile() && !stat.isFIFO()) throw new InputError(`${file}: it is no file; ${EXPECTED}`);
    const { size } = stat;
    if (size > LARGEST_FILE)
      throw new InputError(
        `${file}: ${(size / 1e6).toFixed(1)} MB is no scenario; expected at most ${LARGEST_FILE / 1e6} MB`,
      );
    source = readFileSync(full, 'utf8');
  } catch (error) {
    if (error instanceof InputError) throw error;
    throw new InputError(`${file}: ${reasonOf(error)}; ${EXPECTED}`);
  }
  return { ...parseScenarioWithOrigins(source, { fileName: file }), fileName: file, source };
}
