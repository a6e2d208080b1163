import { type BreakingCategory, breakingCategory } from '../assess/wear/breakingCategory.ts';
import { ratedPoint } from '../machine/ratedPoint.ts';
import { largest } from '../measure/extremum.ts';
import { type DutiesOfRun, type MeanBreaking, type MeanDuties, meanDuties } from '../measure/meanDuties.ts';
import { operationsOf } from '../measure/operations.ts';
import { dutyStretches, poleDuties } from '../measure/poleDuties.ts';
import { quadratureOf, type Stretch } from '../measure/quadrature.ts';
import { assertScenario } from '../scenario/assertScenario.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { runTrajectory } from '../simulate/run.ts';
import { isSuccessful } from '../simulate/status.ts';
import type { Trajectory } from '../simulate/trajectory.ts';
import type { ContactorName } from '../starter/starter.ts';

/** What the contactors do in a scenario, averaged over the instants at which it may find the supply. */
export interface OpeningInstants {
  /** null where no run ends well, or nothing is made and broken. */
  readonly means: MeanDuties | null;
  /** One for each of `means.breakings`. */
  readonly categories: readonly BreakingCategory[];
  /** Supply angle of the run with the largest |torque| after the closing that opposes rotation, rad; null: nothing opposes it. */
  readonly worstAngle: number | null;
  /** Number of runs that were made. */
  readonly runs: number;
  /** Number of those that did not end well and are left out. */
  readonly failed: number;
  /** Words: how the figures came about, and what failed. */
  readonly sentence: string;
}

/**
 * Supply angles without a stated number. They spread over half a period, after which every current repeats with the other sign.
 * Which pole clears first repeats after a sixth of a period: a number that three does not divide spreads evenly over
 * that too.
 */
export const OPENING_INSTANTS = 13;

/** Loosest tolerance of the runs: arcs are averaged over instants that are much further apart. */
const SURVEY_TOLERANCE = 1e-6;

/**
 * Runs a scenario over evenly spaced supply angles: the commands come at any instant of the period, as people give them.
 *
 * @param count number of supply angles, at least 1; best not a multiple of 3
 * @throws ScenarioError as `simulate` does
 */
export function openingInstants(scenario: Scenario, count: number = OPENING_INSTANTS): OpeningInstants {
  assertScenario(scenario);
  const { supply, solver, contactors } = scenario;
  const bounceTimes = {
    forward: contactors?.forward.bounceTime ?? null,
    reverse: contactors?.reverse.bounceTime ?? null,
  };
  const relativeTolerance = Math.max(SURVEY_TOLERANCE, solver.relativeTolerance);
  const good: DutiesOfRun[] = [];
  let worst = { angle: supply.angle, torque: 0 };
  for (let k = 0; k < count; k++) {
    const angle = supply.angle + (k * Math.PI) / count;
    const run = runTrajectory({
      ...scenario,
      supply: { ...supply, angle },
      solver: { ...solver, relativeTolerance },
    });
    if (!isSuccessful(run.status)) continue;
    const blow = stretchAfterReversal(run);
    const quadrature = quadratureOf(run, [...dutyStretches(run), ...(blow === null ? [] : [blow])]);
    good.push({ duties: poleDuties(quadrature, bounceTimes), commands: run.commands, angle });
    const torque = blow === null ? null : largest(quadrature, 'torque', 'magnitude', ...blow);
    if (torque !== null && torque.value > worst.torque) worst = { angle, torque: torque.value };
  }
  const means = meanDuties(good, supply.frequency);
  return {
    means,
    categories: (means?.breakings ?? []).map((breaking) => categoryOf(scenario, breaking)),
    worstAngle: worst.torque > 0 ? worst.angle : null,
    runs: count,
    failed: count - good.length,
    sentence: sentenceOf(count, count - good.length, means !== null),
  };
}

/** Periods after a closing within which the largest torque of its transient occurs: the offset of the flux has mostly decayed by then. */
const TRANSIENT = 5;

/** What follows the closing of the contactor that opposes rotation, s; null: none does. */
function stretchAfterReversal(run: Trajectory): Stretch | null {
  const { reversal } = operationsOf(run);
  if (reversal === null || reversal.touch === null) return null;
  return [reversal.touch, Math.min(run.tEnd, reversal.touch + TRANSIENT / run.scenario.supply.frequency)];
}

function categoryOf(scenario: Scenario, breaking: MeanBreaking): BreakingCategory {
  const current = breaking.equivalentCurrent ?? partingCurrent(breaking);
  return breakingCategory(current, breaking.meanRecoveryVoltage, ratingOf(scenario, breaking.contactor));
}

/** R.m.s. value of the sine with the largest crest at parting, A. */
function partingCurrent({ poles }: MeanBreaking): number {
  return Math.max(...poles.map(({ worstCurrent }) => worstCurrent)) / Math.SQRT2;
}

/** Of the contactor; where nothing is said about it, one that fits the motor. */
function ratingOf(scenario: Scenario, contactor: ContactorName): { current: number; voltage: number } {
  const device = scenario.contactors?.[contactor];
  return {
    current: device?.ratedCurrentAc3 ?? ratedPoint(scenario.machine, scenario.supply).current,
    voltage: device?.ratedVoltage ?? scenario.supply.lineVoltage,
  };
}

function sentenceOf(count: number, failed: number, found: boolean): string {
  const how = `Mean over ${count} runs whose supply angles are spread evenly over half a period, so that the contacts part at any instant of it.`;
  const ill =
    failed === 0
      ? ''
      : failed === count
        ? ' None of these runs ends well, so that there are no figures.'
        : ` ${failed} of these runs ${failed === 1 ? 'does' : 'do'} not end well and ${failed === 1 ? 'is' : 'are'} left out.`;
  return how + ill + (found || failed === count ? '' : ' No contactor makes or breaks in them.');
}
