import { ScenarioError } from './scenarioError.ts';

/**
 * The error for a scenario whose values are possible one by one but contradict each other once the circuit is
 * solved. It has no line: only the reader of the file knows where the path stands in it.
 *
 * @param path keys that lead to the value, joined by dots
 * @param found what stands there
 * @param message what is wrong
 * @param expected what would be right
 */
export function contradiction(path: string, found: string, message: string, expected: string): ScenarioError {
  return new ScenarioError([
    { code: 'conflict', file: 'scenario', line: null, column: null, path, found, message, expected },
  ]);
}
