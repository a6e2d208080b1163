import type { CriterionKey } from '../assess/criterion.ts';
import { runReasons } from '../assess/runReasons.ts';
import { type Suitability, suitability } from '../assess/suitability.ts';
import type { RunResult } from '../measure/result.ts';
import { simulate } from '../measure/simulate.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { Alternative } from './alternatives/alternative.ts';
import { alternatives } from './alternatives/alternatives.ts';
import type { Extreme } from './inverse/extreme.ts';
import { extremes, type Judge, type Judged, smallestResistor } from './inverse/extremes.ts';
import { judgedAlone, worstOf } from './judgedAlone.ts';
import { type OpeningInstants, openingInstants } from './openingInstants.ts';

/** Whether plugging suits a load, how else it may be stopped, and how far the load may change. */
export interface Judgement {
  readonly result: RunResult;
  readonly suitability: Suitability;
  /** What the contactors make and break, and over which runs. */
  readonly instants: OpeningInstants;
  /** The run at the closing angle with the largest torque; the scenario's own where none is larger. */
  readonly worst: RunResult;
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

/** Criteria that a resistor in the lines can bring within their limits: what grows with current and torque of plugging. */
const CURED_BY_RESISTORS: readonly CriterionKey[] = [
  'instantaneousTrip',
  'voltageDip',
  'makingCapacity',
  'breakingCapacity',
  'shaftTorque',
  'deceleration',
  'tipping',
  'sliding',
  'lockedRotorWithstand',
  'overloadRelay',
];
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
  const judge = judgeOf(instants, alone.worst, options);
  const failing = found.criteria.filter(({ outcome }) => outcome === 'fail').map(({ key }) => key);
  const resistorMayHelp =
    failing.length > 0 &&
    failing.every((key) => CURED_BY_RESISTORS.includes(key)) &&
    runReasons(result).against.length === 0;
  const { heating } = found;
  const basis = {
    model: typeof heating === 'string' ? null : heating.model,
    heat: typeof heating === 'string' ? null : heating.heat,
    cageIsFitted: options.cageIsFitted,
    means: result.operations.reversal === null ? null : instants.means,
    failing: found.criteria.filter(({ outcome }) => outcome === 'fail').map(({ name }) => name),
  };
  return {
    ...alone,
    alternatives: result.usable
      ? alternatives(result, basis, resistorMayHelp ? smallestResistor(result, judge) : null)
      : [],
    extremes: options.extremes && result.usable ? extremes(result, judge) : null,
  };
}

/** Judges changed scenarios with fewer runs, and changed duties without any. */
function judgeOf(instants: OpeningInstants, worstNow: RunResult, { cageIsFitted }: JudgementOptions): Judge {
  const judged = (result: RunResult, means: OpeningInstants['means'], worst: RunResult): Judged => {
    const { unusable, against, lacking } = runReasons(result);
    return {
      result,
      criteria: suitability(result, means, cageIsFitted, worst).criteria,
      // A load that has come to rest before the other contactor's turn is not plugged any more.
      against: unusable !== null ? [unusable] : lacking !== null ? [...against, lacking] : against,
    };
  };
  return {
    // Another duty changes no torque.
    run: (result) => judged(result, instants.means, worstNow),
    scenario: (scenario) => {
      const relativeTolerance = Math.max(TRIAL_TOLERANCE, scenario.solver.relativeTolerance);
      const quick = { ...scenario, solver: { ...scenario.solver, relativeTolerance } };
      const result = simulate(quick);
      // What fails already needs no further runs.
      const alone = judged(result, null, result);
      if (alone.against.length > 0 || alone.criteria.some(({ outcome }) => outcome === 'fail')) return alone;
      const tried = openingInstants(quick);
      return judged(result, tried.means, worstOf(quick, result, tried));
    },
  };
}
