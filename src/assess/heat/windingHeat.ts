import { squared } from '../../numeric/raised.ts';
import type { ThermalData } from '../../scenario/scenario.ts';
import type { ThermalNode, ThermalParameter } from './thermalNetwork.ts';
import { givenOr } from './thermalParameter.ts';
import { COPPER, TYPICAL_THERMAL } from './typicalThermal.ts';
import { limitOfRise } from './windingLimit.ts';

/** Limit of the winding: IEC 60034-1; none without an insulation class: a class is not taken silently. */
export function windingLimit(
  thermal: ThermalData | undefined,
  ambient: number,
): Pick<ThermalNode, 'limit' | 'limitSource'> {
  const insulationClass = thermal?.insulationClass ?? null;
  if (thermal === undefined || insulationClass === null)
    return { limit: null, limitSource: 'the insulation class is missing' };
  const rise = limitOfRise(insulationClass, ambient, thermal.altitude);
  if (typeof rise === 'string') return { limit: null, limitSource: rise };
  return {
    limit: ambient + rise,
    limitSource: `IEC 60034-1, class ${insulationClass}: rise of ${rise.toFixed(0)} K at ${ambient} °C and ${thermal.altitude} m`,
  };
}

/** Heat capacity of the winding: stated, or the loss at rated load over the rate at which the rated current density heats copper without cooling. */
export function windingHeatCapacity(
  thermal: ThermalData | undefined,
  ratedLoss: number,
  temperature: number,
): ThermalParameter {
  const name = 'heat capacity of the winding';
  const { value: density, source } = TYPICAL_THERMAL.currentDensity;
  const { resistivity, zeroResistance, volumetricHeat } = COPPER;
  const hot = (resistivity * (zeroResistance + temperature)) / (zeroResistance + 20);
  const rate = (hot * squared(density)) / volumetricHeat;
  return givenOr(name, thermal?.windingHeatCapacity, {
    value: ratedLoss / rate,
    unit: 'J/K',
    source: `rated current heats copper by ${rate.toPrecision(2)} K/s without cooling; ${source}`,
  });
}
