import { suitability } from '../assess/suitability.ts';
import { simulate } from '../measure/simulate.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { Judgement } from './judgement.ts';
import { openingInstants } from './openingInstants.ts';

/**
 * The verdict on a scenario without alternatives and inverse questions.
 *
 * @param cageIsFitted the double cage was fitted to a nameplate
 * @throws ScenarioError as `simulate` does
 */
export function judgedAlone(
  scenario: Scenario,
  cageIsFitted: boolean,
): Pick<Judgement, 'result' | 'instants' | 'suitability'> {
  const result = simulate(scenario);
  const instants = openingInstants(scenario);
  return { result, instants, suitability: suitability(result, instants.means, cageIsFitted) };
}
