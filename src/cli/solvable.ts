import { ratedPoint } from '../machine/ratedPoint.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { shaftOf } from '../shaft/shaft.ts';
import { initialRunState } from '../simulate/runState.ts';

/**
 * Makes sure of what shows only when circuit, rating and load are solved.
 *
 * @throws ScenarioError without places in a file
 */
export function assertSolvable(scenario: Scenario): void {
  ratedPoint(scenario.machine, scenario.supply);
  initialRunState(scenario, shaftOf(scenario));
}
