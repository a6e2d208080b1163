import { assertScenario } from '../scenario/assertScenario.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { runTrajectory } from '../simulate/run.ts';
import { measure } from './measure.ts';
import type { RunResult } from './result.ts';

/**
 * Runs a scenario and measures it.
 *
 * @param scenario validated, SI (from `parseScenario`)
 * @returns the run with its status: what goes wrong during a run is a status, not an exception
 * @throws ScenarioError when a number is impossible, or circuit, rating and load contradict each other
 */
export function simulate(scenario: Scenario): RunResult {
  assertScenario(scenario);
  return measure(runTrajectory(scenario));
}
