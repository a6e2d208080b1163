import { parseScenarioWithOrigins } from '../estimate/parseScenarioWithOrigins.ts';
import type { ScenarioWithOrigins } from '../scenario/resolveScenario.ts';
import type { CliIo } from './io.ts';
import { readTextFile } from './readTextFile.ts';

/** A scenario with the text it was read from. */
export interface ScenarioFile extends ScenarioWithOrigins {
  readonly fileName: string;
  readonly source: string;
}

/** Files above this are refused unread, bytes; a long scenario has a few kilobytes. */
const LARGEST_FILE = 1_000_000;

const EXPECTED = 'a scenario file (YAML or JSON)';

/**
 * Reads and checks a scenario file.
 *
 * @param file path, relative to the working folder
 * @throws InputError when the file cannot be read; ScenarioError when it cannot be used
 */
export function readScenarioFile(file: string, io: CliIo): ScenarioFile {
  const source = readTextFile(file, { largest: LARGEST_FILE, what: 'scenario', expected: EXPECTED }, io);
  return { ...parseScenarioWithOrigins(source, { fileName: file }), fileName: file, source };
}
