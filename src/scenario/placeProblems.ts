import type { Locate, Path } from './place.ts';
import { readYaml } from './readYaml.ts';
import { ScenarioError } from './scenarioError.ts';

/**
 * Adds file, line and column to problems that were found without the text at hand, once circuit and load were solved.
 *
 * @param error from `simulate`
 * @param source the text the scenario was read from
 * @param fileName name for the messages
 */
export function placeProblems(error: ScenarioError, source: string, fileName: string): ScenarioError {
  const { data } = readYaml(source);
  return placedBy(error, data?.locate ?? (() => ({ line: null, column: null })), fileName);
}

/**
 * Adds file, line and column to problems by a reader that knows its lines.
 *
 * @param error with paths only
 * @param locate finds the place of a path in the text
 * @param fileName name for the messages
 */
export function placedBy(error: ScenarioError, locate: Locate, fileName: string): ScenarioError {
  const [first, ...rest] = error.problems.map((problem) => {
    const steps = problem.path === '' ? [] : problem.path.split('.');
    const path: Path = steps.map((step) => (/^\d+$/.test(step) ? Number(step) : step));
    return { ...problem, ...locate(path, 'value'), file: fileName };
  });
  return first === undefined ? error : new ScenarioError([first, ...rest]);
}
