import type { MeanDuties } from '../measure/meanDuties.ts';
import type { RunResult } from '../measure/result.ts';
import { type Criterion, notJudged } from './criterion.ts';
import { heatCriteria } from './heat/heatCriteria.ts';
import { type Heating, heating } from './heat/heating.ts';
import { protectionCriteria } from './protection/protectionCriteria.ts';
import { type TimeCurrentData, timeCurrentData } from './protection/timeCurrent.ts';
import { whyUnusable } from './runReasons.ts';
import { type FailureConsequences, failureConsequences } from './stop/failureConsequences.ts';
import { mechanicsCriteria } from './stop/mechanicsCriteria.ts';
import { runCriteria } from './stop/runCriteria.ts';
import { type Verdict, verdict } from './verdict.ts';
import { contactCriteria } from './wear/contactCriteria.ts';
import { contactWear } from './wear/contactWear.ts';
import type { ContactWear } from './wear/contactWearTypes.ts';

/** Whether plugging suits the load of a run, and all that it stands on. */
export interface Suitability {
  readonly verdict: Verdict;
  /** In the order of presentation. */
  readonly criteria: readonly Criterion[];
  /** Words where it could not be worked out. */
  readonly heating: Heating | string;
  /** Null: no contactors are described, or no run ended well. */
  readonly wear: ContactWear | null;
  readonly timeCurrent: TimeCurrentData;
  /** Null: no plug or reversal takes place in the run. */
  readonly consequences: FailureConsequences | null;
}

/**
 * Judges a run.
 *
 * @param means what its contactors make and break on average over instants of opening; null: no run ended well
 * @param cageIsFitted the double cage was fitted to a nameplate
 * @param worst the same at the closing angle with the largest torque; torque, deceleration and crest are judged by it
 */
export function suitability(
  result: RunResult,
  means: MeanDuties | null,
  cageIsFitted = false,
  worst: RunResult = result,
): Suitability {
  const { scenario } = result;
  const { contactors, duty } = scenario;
  const heat = heating(result, cageIsFitted);
  const wear =
    contactors === undefined || means === null
      ? null
      : contactWear(means, contactors, duty ?? null, scenario);
  // In the order of CRITERION_KEYS.
  const found = [
    ...runCriteria(result),
    ...heatCriteria(result, heat),
    ...contactCriteria(scenario, means, wear),
    ...protectionCriteria(result, worst, means),
    ...mechanicsCriteria(worst),
  ];
  const unusable = whyUnusable(result);
  const criteria = found.map((criterion) => (unusable === null ? criterion : withdrawn(criterion, unusable)));
  return {
    verdict: verdict(criteria, result),
    criteria,
    heating: heat,
    wear,
    timeCurrent: timeCurrentData(result),
    consequences: failureConsequences(result),
  };
}

/** No value of a run whose figures may not be used is shown beside a limit. */
function withdrawn(criterion: Criterion, why: string): Criterion {
  return notJudged({ ...criterion, value: null }, why);
}
