import { type Suitability, suitability } from '../assess/suitability.ts';
import { meanDuties } from '../measure/meanDuties.ts';
import { poleDuties } from '../measure/poleDuties.ts';
import { quadratureOf } from '../measure/quadrature.ts';
import type { RunResult } from '../measure/result.ts';
import { isSuccessful } from '../simulate/status.ts';

/**
 * Judges a run by itself, as if its closing angle were every angle: at once, where `judgement` makes a dozen runs. What contacts make and
 * break, torque and crest may be worse at another angle.
 *
 * @param cageIsFitted the double cage was fitted to a nameplate
 */
export function judgedAsRun(result: RunResult, cageIsFitted: boolean): Suitability {
  const { trajectory, scenario } = result;
  const { contactors, supply } = scenario;
  if (!isSuccessful(result.status)) return suitability(result, null, cageIsFitted);
  const duties = poleDuties(quadratureOf(trajectory), {
    forward: contactors?.forward.bounceTime ?? null,
    reverse: contactors?.reverse.bounceTime ?? null,
  });
  const alone = { duties, commands: trajectory.commands, angle: supply.angle };
  return suitability(result, meanDuties([alone], supply.frequency), cageIsFitted);
}
