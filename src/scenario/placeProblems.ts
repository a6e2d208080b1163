import type { Path } from './place.ts';
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
  const [first, ...rest] = error.problems.map((problem) => {
    const path: Path = problem.path === '' ? [] : problem.path.split('.');
    const place = data?.locate(path, 'value') ?? { line: null, column: null };
    return { ...problem, ...place, file: fileName };
  });
  return first === undefined ? error : new ScenarioError([first, ...rest]);
}
