import { type ParseOptions, parseScenarioWithOrigins } from './parseScenarioWithOrigins.ts';
import type { Scenario } from './scenario.ts';

/**
 * Reads a scenario: everything in SI, every default filled in.
 *
 * @param source YAML or JSON text, or the same as a plain object (problems then have no line numbers)
 * @param options name of the file for the messages
 * @throws ScenarioError with every problem found, each with its line, column, path and what would be right
 * @example
 * parseScenario(await readFile('examples/plugs-comfortably.yaml', 'utf8'), { fileName: 'plugs-comfortably.yaml' })
 */
export function parseScenario(source: unknown, options: ParseOptions = {}): Scenario {
  return parseScenarioWithOrigins(source, options).scenario;
}
