import type { ParseOptions } from '../scenario/readScenario.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { parseScenarioWithOrigins } from './parseScenarioWithOrigins.ts';

/**
 * Reads a scenario: everything in SI, every default filled in, a circuit found where a nameplate or tests stand for it.
 *
 * @param source YAML or JSON text, or the same as a plain object (problems then have no line numbers)
 * @param options name of the file for the messages
 * @throws ScenarioError with every problem found, each with its line, column, path and what would be right
 * @example
 * parseScenario(await readFile('examples/engineer/may-this-belt-be-plugged.yaml', 'utf8'), { fileName: 'may-this-belt-be-plugged.yaml' })
 */
export function parseScenario(source: unknown, options: ParseOptions = {}): Scenario {
  return parseScenarioWithOrigins(source, options).scenario;
}
