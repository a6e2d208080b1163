import { placeProblems } from '../scenario/placeProblems.ts';
import { ScenarioError } from '../scenario/scenarioError.ts';
import type { ScenarioFile } from './readScenarioFile.ts';

/**
 * Does something with a scenario from a file; what only then turns out to be wrong gets its line and column.
 *
 * @throws ScenarioError with places in the file
 */
export function placed<T>(scenarioFile: ScenarioFile, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (error instanceof ScenarioError)
      throw placeProblems(error, scenarioFile.source, scenarioFile.fileName);
    throw error;
  }
}
