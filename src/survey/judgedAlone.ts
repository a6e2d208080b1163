import { suitability } from '../assess/suitability.ts';
import type { RunResult } from '../measure/result.ts';
import { simulate } from '../measure/simulate.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { Judgement } from './judgement.ts';
import { type OpeningInstants, openingInstants } from './openingInstants.ts';

/**
 * The verdict on a scenario without alternatives and inverse questions.
 *
 * @param cageIsFitted the double cage was fitted to a nameplate
 * @throws ScenarioError as `simulate` does
 */
export function judgedAlone(
  scenario: Scenario,
  cageIsFitted: boolean,
): Pick<Judgement, 'result' | 'instants' | 'worst' | 'suitability'> {
  const result = simulate(scenario);
  const instants = openingInstants(scenario);
  const worst = worstOf(scenario, result, instants);
  return { result, instants, worst, suitability: suitability(result, instants.means, cageIsFitted, worst) };
}

/** The run at the closing angle with the largest torque: nobody chooses the instant of closing. */
export function worstOf(scenario: Scenario, result: RunResult, { worstAngle }: OpeningInstants): RunResult {
  if (worstAngle === null || worstAngle === scenario.supply.angle) return result;
  const worst = simulate({ ...scenario, supply: { ...scenario.supply, angle: worstAngle } });
  return worst.usable ? worst : result;
}
