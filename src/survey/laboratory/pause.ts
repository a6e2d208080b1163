import { dutyCycle, mostPerHour, runningOf } from '../../assess/heat/dutyCycle.ts';
import { type OperationHeat, reversalHeat } from '../../assess/heat/heat.ts';
import { heating } from '../../assess/heat/heating.ts';
import { operationWindows } from '../../assess/heat/operationWindows.ts';
import { NODE_WORDS, permissibleOperations } from '../../assess/heat/permissibleOperations.ts';
import { relayJudgement } from '../../assess/protection/relayJudgement.ts';
import { quadratureOf } from '../../measure/quadrature.ts';
import type { RunResult } from '../../measure/result.ts';

/** How long to wait between two trials, and how many an hour that leaves. SI. */
export interface Pause {
  /** From standstill to the next start, s. */
  readonly time: number;
  /** Trials per hour with that pause. */
  readonly perHour: number;
  /** What the model permits for ever, before the share is taken, 1/h. */
  readonly permissible: number;
  /** What sets it: "the winding", "the contactors' rate of operations". */
  readonly bound: string;
  /** How long the set runs between start and stop, s. */
  readonly running: number;
  /** Number of trials one right after the other, from cold, until the overload relay trips; null: no relay is stated, or it never does. */
  readonly untilTrip: number | null;
  /** Number of trials in this rhythm, from cold, until the overload relay trips; null: no relay is stated, or it never does. */
  readonly untilTripWithPause: number | null;
  /** Number of trials one right after the other, from cold, until winding or cage passes its limit; null: never, or not of this trial. */
  readonly untilHot: number | null;
}

/**
 * Share of the permissible operations that a class should use. Common practice, no source; the thermal model permits more than the tables
 * of makers.
 */
export const SHARE_USED = 0.5;

const SECONDS_PER_HOUR = 3600;

/**
 * The pauses of a set, from the thermal model of its motor, the starts its maker states and the rate of its contactors.
 *
 * @param result a run with start and plug stop
 * @param cageIsFitted the double cage was fitted to a nameplate
 * @returns words where something is missing
 */
export function pausesOf(
  result: RunResult,
  cageIsFitted: boolean,
): { readonly plugStop: Pause | string; readonly reversal: Pause | string } {
  const { scenario } = result;
  const both = (why: string) => ({ plugStop: why, reversal: why });
  if (scenario.thermal === undefined)
    return both('the section thermal is missing (insulationClass, ratedRise, ambient)');
  const found = heating(result, cageIsFitted);
  if (typeof found === 'string') return both(found);
  const running = runningOf(scenario.duty, 'startPlugStop');
  if (typeof running === 'string') return both(running);
  if (running.kind === 'factor')
    return both('the running time of the duty is missing (duty.runningTime; a factor does not give it)');
  const { model, relay } = found;
  const contactors = scenario.contactors;
  const rates = [contactors?.forward, contactors?.reverse].flatMap(
    (device) => device?.operationsPerHourAc4 ?? [],
  );
  const quadrature = quadratureOf(result.trajectory);
  const windows = operationWindows(result, quadrature);
  const tripInRhythm = (perHour: number): number | null => {
    if (typeof windows === 'string' || typeof relay === 'string') return null;
    const cycle = dutyCycle(found.heat, 'startPlugStop', running, perHour);
    const judged = relayJudgement(scenario, quadrature, windows, 'startPlugStop', cycle);
    return typeof judged === 'string' ? null : (judged.atDuty?.cold.operations ?? null);
  };
  const pauseFor = (heat: OperationHeat, isPlugStop: boolean): Pause | string => {
    const thermal = permissibleOperations(model, heat, 'startPlugStop', running);
    if (thermal.perHour === 0) return `not even rare trials are permissible: ${thermal.remark}`;
    const starts = found.fromNoLoadStarts;
    const limits = [
      {
        perHour: thermal.perHour,
        bound: thermal.binding === 'time' ? 'nothing but time' : `the ${NODE_WORDS[thermal.binding]}`,
      },
      ...(isPlugStop && starts !== null && typeof starts !== 'string'
        ? [{ perHour: starts.perHour, bound: 'the starts that the maker states' }]
        : []),
      ...rates.map((perHour) => ({ perHour, bound: "the contactors' rate of operations" })),
    ];
    const least = limits.reduce((a, b) => (b.perHour < a.perHour ? b : a));
    const perHour = SHARE_USED * least.perHour;
    const busy = SECONDS_PER_HOUR / mostPerHour(heat, 'startPlugStop', running);
    const hot = isPlugStop && typeof found.inSuccession !== 'string' ? found.inSuccession.cold : null;
    const trip = isPlugStop && typeof relay !== 'string' ? relay.withoutPause.cold.operations : null;
    return {
      time: Math.max(0, SECONDS_PER_HOUR / perHour - busy),
      perHour,
      permissible: least.perHour,
      bound: least.bound,
      running: running.time,
      untilTrip: finite(trip),
      untilTripWithPause: finite(isPlugStop ? tripInRhythm(perHour) : null),
      untilHot: finite(hot),
    };
  };
  const { heat } = found;
  // After a reversal the set is let run down: a trial is a start and everything up to speed in the other direction.
  const { braking: _, ...parts } = heat;
  const turned: OperationHeat = { ...parts, stopKind: 'braking', stop: reversalHeat(heat) };
  return { plugStop: pauseFor(heat, true), reversal: pauseFor(turned, false) };
}

function finite(count: number | null): number | null {
  return count === null || !Number.isFinite(count) ? null : count;
}
