import { contactWear } from '../../assess/wear/contactWear.ts';
import type { ContactorWear } from '../../assess/wear/contactWearTypes.ts';
import { genericContactor } from '../../assess/wear/genericContactor.ts';
import type { ContactorData, DutyData } from '../../scenario/scenario.ts';
import { ScenarioError } from '../../scenario/scenarioError.ts';
import { stated } from '../../scenario/stated.ts';
import { openingInstants } from '../openingInstants.ts';
import type { PlanRow } from './planRow.ts';
import { planScenario } from './planScenario.ts';
import { doesPlug } from './planStarters.ts';
import { reasonOf } from './reasonOf.ts';
import type { StarterWear, WearNotFound, WearOutcome, WearPerOperation } from './starterWear.ts';

/** Instants of opening for each stop: enough for a date whose life is known to a factor of two. */
const INSTANTS = 4;

/**
 * Wear of a row's starter from its simulated stop: the circuit is estimated from the nameplate, the stop runs from steady
 * running over a few instants of opening.
 *
 * @param row that lacks nothing
 * @param inertiaFactor factor by which the load inertia is multiplied
 * @returns the reasons where the data contradict themselves, the motor cannot drive the load, or the stop does not end well
 */
export function simulatedWear(row: PlanRow, inertiaFactor: number): WearOutcome {
  const stop = doesPlug(row) ? 'plug' : 'coast';
  try {
    const { scenario, assumed } = planScenario(row, stop, inertiaFactor);
    const { means, failed } = openingInstants(scenario, INSTANTS);
    if (means === null || failed > 0)
      return {
        reasons: [
          stop === 'plug'
            ? 'plugging does not bring this load to rest in the simulation (power, load inertia, load kind, load torque)'
            : 'the motor cannot be simulated while it coasts with this load (power, load inertia, load kind, load torque)',
        ],
      };
    const device = deviceOf(row);
    const contactors = {
      forward: device,
      reverse: device,
      interlockMechanicalLife: null,
      switchMechanicalLife: null,
    };
    const wear = contactWear(means, contactors, dutyOf(row, stop), scenario);
    return starterWear(wear.forward, wear.reverse, stop, assumed);
  } catch (error) {
    if (!(error instanceof ScenarioError)) throw error;
    return { reasons: error.problems.map(reasonOf) };
  }
}

function starterWear(
  forward: ContactorWear,
  reverse: ContactorWear,
  stop: 'plug' | 'coast',
  assumed: readonly string[],
): StarterWear | WearNotFound {
  const unknown = [forward, reverse].filter((contactor) => contactor.wearUnknown);
  if (unknown.length > 0) return { missing: unknown.flatMap(({ missing }) => missing) };
  return {
    forward: perOperation(forward, stop),
    reverse: perOperation(reverse, stop),
    origin: forward.basis.generic
      ? 'generic curve: no life of this contactor is stated'
      : 'as stated for the contactor',
    remarks: [
      ...(assumed.length > 0 ? [`Assumed: ${assumed.join('; ')}.`] : []),
      ...new Set([forward, reverse].flatMap(({ breakings }) => breakings.flatMap(remarksOf))),
    ],
  };
}

/** Bouncing at the touch is in the lives that tests give; what exceeds that needs the bounce time, which no table states. */
function perOperation({ perEvent, operations }: ContactorWear, stop: 'plug' | 'coast'): WearPerOperation {
  const start = perEvent.start ?? 0;
  const factor = (end: 'low' | 'high') => (operations === null ? 1 : operations[end] / operations.value);
  return {
    normal: start + (perEvent.stop ?? 0),
    plug: stop === 'plug' ? start + (perEvent.plugStop ?? 0) : 0,
    inch: perEvent.inch ?? 0,
    lifeFactor: { low: factor('low'), high: factor('high') },
  };
}

/** What a row states of each of its contactors; the rest is not known. */
function deviceOf({ contactor }: PlanRow): ContactorData {
  return {
    ...genericContactor(stated(contactor.ratedCurrentAc3 ?? undefined, 'rated current of the contactor')),
    ratedCurrentAc4: contactor.ratedCurrentAc4,
    lifeAc3: contactor.lifeAc3,
    lifeAc4: contactor.lifeAc4,
  };
}

function dutyOf({ duty }: PlanRow, stop: 'plug' | 'coast'): DutyData {
  const inchingShare = duty.inchingShare ?? 0;
  return {
    cycle: stop === 'plug' ? 'startPlugStop' : 'startCoast',
    operationsPerHour: null,
    operationsPerDay: null,
    runningTime: null,
    cyclicDurationFactor: null,
    pluggingShare: duty.pluggingShare ?? (stop === 'plug' ? 1 - inchingShare : 0),
    inchingShare,
    contactsChanged: null,
    operationsSince: null,
  };
}

/** What a life rests on, as sentences; where another occasion rests on the same it is the same sentence. */
function remarksOf({ life }: ContactorWear['breakings'][number]): string[] {
  const remarks = life.remark === '' ? [] : life.remark.split('; ');
  return remarks.map((text) => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`);
}
