import { parseScenarioWithOrigins } from '../estimate/parseScenarioWithOrigins.ts';
import type { ScenarioWithOrigins } from '../scenario/resolveScenario.ts';
import { ScenarioError } from '../scenario/scenarioError.ts';
import { fileKind } from './fileKind.ts';
import type { CliIo } from './io.ts';
import { otherKind } from './otherKind.ts';
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
  return scenarioOfText(
    readTextFile(file, { largest: LARGEST_FILE, what: 'scenario', expected: EXPECTED }, io),
    file,
  );
}

/**
 * Checks the text of a scenario file.
 *
 * @throws ScenarioError when it cannot be used
 */
export function scenarioOfText(source: string, file: string): ScenarioFile {
  try {
    return { ...parseScenarioWithOrigins(source, { fileName: file }), fileName: file, source };
  } catch (error) {
    if (error instanceof ScenarioError && fileKind(source) === 'survey') throw otherKind(file, 'survey');
    throw error;
  }
}
