import { runReasons } from '../assess/runReasons.ts';
import { type Suitability, suitability } from '../assess/suitability.ts';
import type { RunResult } from '../measure/result.ts';
import { simulate } from '../measure/simulate.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { Alternative } from './alternatives/alternative.ts';
import { alternatives } from './alternatives/alternatives.ts';
import type { Extreme } from './inverse/extreme.ts';
import { extremes, type Judge, type Judged, smallestResistor } from './inverse/extremes.ts';
import { judgedAlone } from './judgedAlone.ts';
import { type OpeningInstants, openingInstants } from './openingInstants.ts';

/** Whether plugging suits a load, how else it may be stopped, and how far the load may change. */
export interface Judgement {
  readonly result: RunResult;
  readonly suitability: Suitability;
  /** What the contactors make and break, and over which runs. */
  readonly instants: OpeningInstants;
  readonly alternatives: readonly Alternative[];
  /** Null: not asked for. */
  readonly extremes: readonly Extreme[] | null;
}

/** What is asked for beside the verdict. */
export interface JudgementOptions {
  /** The double cage was fitted to a nameplate. */
  readonly cageIsFitted: boolean;
  /** Answer the inverse questions too: some hundred runs more. */
  readonly extremes: boolean;
}

/** Supply angles over which a changed scenario is judged: fewer than for the verdict itself. No multiple of 3. */
const INSTANTS_OF_TRIALS = 4;
/** Loosest tolerance of changed scenarios: their energy balance still closes to the residual that is asked of a run. */
const TRIAL_TOLERANCE = 1e-7;

/**
 * Judges a scenario.
 *
 * @throws ScenarioError as `simulate` does
 */
export function judgement(scenario: Scenario, options: JudgementOptions): Judgement {
  const alone = judgedAlone(scenario, options.cageIsFitted);
  const { result, instants, suitability: found } = alone;
  const judge = judgeOf(instants, options);
  const failsNow = found.criteria.some(({ outcome }) => outcome === 'fail');
  const { heating } = found;
  const basis = {
    model: typeof heating === 'string' ? null : heating.model,
    heat: typeof heating === 'string' ? null : heating.heat,
    cageIsFitted: options.cageIsFitted,
    means: result.operations.reversal === null ? null : instants.means,
  };
  return {
    ...alone,
    alternatives: result.usable
      ? alternatives(result, basis, failsNow ? smallestResistor(result, judge) : null)
      : [],
    extremes: options.extremes && result.usable ? extremes(result, judge) : null,
  };
}

/** Judges changed scenarios with fewer runs, and changed duties without any. */
function judgeOf(instants: OpeningInstants, { cageIsFitted }: JudgementOptions): Judge {
  const judged = (result: RunResult, means: OpeningInstants['means']): Judged => {
    const { unusable, against, lacking } = runReasons(result);
    return {
      result,
      criteria: suitability(result, means, cageIsFitted).criteria,
      // A load that has come to rest before the other contactor's turn is not plugged any more.
      against: unusable !== null ? [unusable] : lacking !== null ? [...against, lacking] : against,
    };
  };
  return {
    run: (result) => judged(result, instants.means),
    scenario: (scenario) => {
      const relativeTolerance = Math.max(TRIAL_TOLERANCE, scenario.solver.relativeTolerance);
      const quick = { ...scenario, solver: { ...scenario.solver, relativeTolerance } };
      return judged(simulate(quick), openingInstants(quick, INSTANTS_OF_TRIALS).means);
    },
  };
}
