import { checkObject } from './checkObject.ts';
import { describeValue } from './fault.ts';
import { findProblems } from './findProblems.ts';
import type { CircuitEstimator } from './nameplate.ts';
import { type Locate, valueAt } from './place.ts';
import { placedBy } from './placeProblems.ts';
import type { Problem } from './problem.ts';
import { listed, pathText, withCommaHint, words } from './problemList.ts';
import { readYaml } from './readYaml.ts';
import { resolveScenario, type ScenarioWithOrigins } from './resolveScenario.ts';
import { ScenarioError } from './scenarioError.ts';

/** What the parser cannot see in the text. */
export interface ParseOptions {
  /** Name for the messages; `scenario` if left out. */
  readonly fileName?: string;
}

/**
 * Reads a scenario and says of every value whether it was given, a default, an assumption or computed from others.
 *
 * @param source YAML or JSON text, or the same as a plain object (problems then have no line numbers)
 * @param options name of the file for the messages
 * @param estimator finds a circuit where a nameplate or tests stand in place of one
 * @returns the scenario in SI with everything filled in, and the origins
 * @throws ScenarioError with every problem found
 */
export function readScenario(
  source: unknown,
  options: ParseOptions,
  estimator: CircuitEstimator,
): ScenarioWithOrigins {
  const file = options.fileName ?? 'scenario';
  const { data, faults } = typeof source === 'string' ? readYaml(source) : readObject(source);
  const problems: Problem[] = faults.map(({ place, ...fault }) => ({
    ...place,
    ...words(fault),
    file,
    path: '',
    found: null,
  }));
  if (data !== null) {
    const { value, locate } = data;
    const result = findProblems(value);
    if ('input' in result && problems.length === 0) {
      try {
        return resolveScenario(result.input, value, estimator);
      } catch (error) {
        if (!(error instanceof ScenarioError)) throw error;
        throw placedBy(error, locate, file);
      }
    }
    for (const { path, ...fault } of 'faults' in result ? result.faults : []) {
      const found = valueAt(value, path);
      problems.push({
        ...locate(path, fault.code === 'unknownKey' ? 'key' : 'value'),
        ...words(withCommaHint(fault, path)),
        file,
        path: pathText(path),
        found: found === undefined ? null : describeValue(found),
      });
    }
  }
  throw new ScenarioError(listed(problems));
}

function readObject(source: unknown): ReturnType<typeof readYaml> {
  const place = { line: null, column: null };
  const fault = checkObject(source);
  if (fault !== null) return { data: null, faults: [{ ...fault, place }] };
  const locate: Locate = () => place;
  return { data: { value: source, locate }, faults: [] };
}
