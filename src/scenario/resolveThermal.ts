import { defaultAltitude, defaultAmbient } from './defaults.ts';
import type { ThermalData } from './judgementData.ts';
import type { Note } from './origin.ts';
import type { ScenarioInput } from './scenarioInput.ts';

/**
 * Fills in the thermal data.
 *
 * @param input as stated, in SI, temperatures in °C
 * @param note takes down what was not given
 */
export function resolveThermal(input: NonNullable<ScenarioInput['thermal']>, note: Note): ThermalData {
  if (input.ambient === undefined)
    note('ambient', `${defaultAmbient} degC`, 'default', 'IEC 60034-1, for which the limits of rise hold');
  if (input.altitude === undefined)
    note('altitude', `${defaultAltitude} m`, 'default', 'as anywhere up to 1000 m');
  return {
    insulationClass: input.insulationClass ?? null,
    ratedRise: input.ratedRise ?? null,
    ambient: input.ambient ?? defaultAmbient,
    altitude: input.altitude ?? defaultAltitude,
    lockedRotorTimeCold: input.lockedRotorTimeCold ?? null,
    lockedRotorTimeHot: input.lockedRotorTimeHot ?? null,
    cageLimit: input.cageLimit ?? null,
    cageRatedTemperature: input.cageRatedTemperature ?? null,
    windingHeatCapacity: input.windingHeatCapacity ?? null,
    cageHeatCapacity: input.cageHeatCapacity ?? null,
    frameHeatCapacity: input.frameHeatCapacity ?? null,
    coolingTimeConstant: input.coolingTimeConstant ?? null,
    standstillCooling: input.standstillCooling ?? null,
    outerCageShare: input.outerCageShare ?? null,
    noLoadStartsPerHour: input.noLoadStartsPerHour ?? null,
  };
}
