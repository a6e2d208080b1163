import { suitability } from '../../assess/suitability.ts';
import type { RunResult } from '../../measure/result.ts';
import type { StopFigures } from '../../measure/stopFigures.ts';
import type { Limit } from '../../scenario/scenario.ts';
import { worstOf } from '../judgedAlone.ts';
import type { OpeningInstants } from '../openingInstants.ts';
import type { StopCost } from './alternative.ts';

/** Names of the criteria that fail where the load is plugged in another way. */
export function failingCriteria(
  result: RunResult,
  instants: OpeningInstants,
  cageIsFitted: boolean,
): readonly string[] {
  const worst = worstOf(result.scenario, result, instants);
  return suitability(result, instants.means, cageIsFitted, worst)
    .criteria.filter(({ outcome }) => outcome === 'fail')
    .map(({ name }) => name);
}

/** What of the limits of a stop another way than plugging does not keep, by name. What is not known is not told. */
export function limitsMissed(result: RunResult, figures: StopFigures, cost: StopCost): readonly string[] {
  const { limits, duty } = result.scenario;
  const exceeds = (value: number | null, limit: Limit | undefined) =>
    typeof limit === 'number' && value !== null && value > limit;
  const shortOf = (value: number | null, limit: Limit | undefined) =>
    typeof limit === 'number' && value !== null && value < limit;
  const comesLate = typeof limits?.stopTime === 'number' && figures.time === null;
  return [
    ...(comesLate || exceeds(figures.time, limits?.stopTime) ? ['time from the command to zero speed'] : []),
    ...(exceeds(figures.angle, limits?.stopAngle) ? ['angle turned until zero speed'] : []),
    ...(exceeds(figures.peakCurrent, rootTwoTimes(limits?.instantaneousTrip))
      ? ['crest of the current']
      : []),
    ...(exceeds(figures.peakTorque, limits?.brakeTorque) ? ['torque of the brake'] : []),
    ...(shortOf(cost.operationsPerHour, duty?.operationsPerHour ?? undefined)
      ? ['permissible operations per hour']
      : []),
    ...(shortOf(cost.contactLife, limits?.contactLife)
      ? ['operations until the contacts are to be replaced']
      : []),
  ];
}

/** Crest of a setting, A. */
function rootTwoTimes(limit: Limit | undefined): Limit | undefined {
  return typeof limit === 'number' ? Math.SQRT2 * limit : limit;
}
