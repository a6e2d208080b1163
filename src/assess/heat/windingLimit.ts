import type { InsulationClass } from '../../scenario/scenario.ts';
import { STANDARD_LIMITS } from '../standardLimits.ts';

const RISES: Readonly<Record<InsulationClass, number>> = {
  '130': STANDARD_LIMITS.rise130.value,
  '155': STANDARD_LIMITS.rise155.value,
  '180': STANDARD_LIMITS.rise180.value,
};

const METRES_PER_STEP = 100;

/**
 * Limit of the winding's rise by resistance, K. IEC 60034-1 (corrections from memory): the rise of the class at 40 °C, larger
 * by the kelvins that the cooling air is colder than 40 °C (no further than 0 °C) and smaller by those it is hotter (up to
 * 60 °C); above 1000 m smaller by 1 % per 100 m, because thinner air cools less.
 *
 * @param ambient of the cooling air, °C
 * @param altitude above sea level, m
 * @returns K; words where the standard leaves the limit to agreement
 */
export function limitOfRise(
  insulationClass: InsulationClass,
  ambient: number,
  altitude: number,
): number | string {
  const { coldestAmbient, hottestAmbient, highestAltitude, referenceAmbient } = STANDARD_LIMITS;
  const { referenceAltitude, altitudeStep } = STANDARD_LIMITS;
  if (ambient > hottestAmbient.value)
    return `the limit of rise is by agreement when the cooling air is hotter than ${hottestAmbient.value} °C`;
  if (altitude > highestAltitude.value)
    return `the limit of rise is by agreement above ${highestAltitude.value} m`;
  const corrected = RISES[insulationClass] + referenceAmbient.value - Math.max(ambient, coldestAmbient.value);
  const steps = Math.max(0, altitude - referenceAltitude.value) / METRES_PER_STEP;
  return corrected * (1 - altitudeStep.value * steps);
}
