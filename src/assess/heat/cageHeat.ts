import { steadyState } from '../../machine/steadyState.ts';
import { magnitude } from '../../numeric/complex.ts';
import { squared } from '../../numeric/raised.ts';
import type { MachineData, Supply, ThermalData } from '../../scenario/scenario.ts';
import { type SourcedValue, STANDARD_LIMITS } from '../standardLimits.ts';
import { type CageBodies, perBody } from './cageBodies.ts';
import { type LockedRotorTimes, lockedRotorTimes } from './lockedRotorTimes.ts';
import type { ThermalParameter } from './thermalNetwork.ts';
import { derivedParameter, givenOr } from './thermalParameter.ts';
import { TYPICAL_THERMAL } from './typicalThermal.ts';

/** What the cage stores and withstands. */
export interface CageHeat {
  /** Of all cages together, J/K. */
  readonly heatCapacity: ThermalParameter;
  /** °C */
  readonly limit: ThermalParameter;
  /** At rated load and 40 °C, °C. */
  readonly ratedTemperature: ThermalParameter;
  readonly lockedRotorTimes: LockedRotorTimes;
}

/**
 * Heat capacity and temperatures of the cage. Unless its capacity is stated, it follows from how long the locked rotor is
 * withstood: for that time the loss of the locked rotor heats the cage without any cooling, from 40 °C (cold) or from the
 * temperature of rated load (hot) up to the limit:
 *
 *     C = P_LR · t / (limit − begin)
 *
 * Where both times are stated they also give the temperature at rated load, limit − (limit − 40 °C)·t_hot/t_cold; the smaller of
 * two capacities counts. Where neither is stated, 12 s from hot are taken, the least that NEMA MG 1 demands. The resistance of
 * the cage counts as constant. With a body of its own for the outer cage, that of the two which gets hotter decides.
 *
 * @param windingTemperature at rated load and 40 °C, °C
 * @param coolest the cage is at least this hot at rated load, because its heat must flow to the frame, °C
 * @param supply stiff
 */
export function cageHeat(
  machine: MachineData,
  supply: Supply,
  thermal: ThermalData | undefined,
  bodies: CageBodies,
  windingTemperature: number,
  coolest: number,
): CageHeat | string {
  const ambient = STANDARD_LIMITS.referenceAmbient.value;
  const typicalLimit = machine.rotorResistors === undefined ? TYPICAL_THERMAL.cageLimit : woundLimit(thermal);
  if (typeof typicalLimit === 'string') return typicalLimit;
  const limit = givenOr('limit of the cage', thermal?.cageLimit, typicalLimit);
  const cold = thermal?.lockedRotorTimeCold ?? null;
  const hot = thermal?.lockedRotorTimeHot ?? null;
  if (cold !== null && hot !== null && hot >= cold)
    return `thermal.lockedRotorTimeHot (${hot} s) is not below thermal.lockedRotorTimeCold (${cold} s)`;
  const ratedTemperature = temperatureAtRatedLoad(thermal, limit.value, windingTemperature, coolest);
  if (ratedTemperature.value <= coolest)
    return `thermal.cageRatedTemperature (${ratedTemperature.value} °C) is not above that of the frame, ${coolest.toFixed(0)} °C`;
  if (limit.value <= ratedTemperature.value)
    return `the limit of the cage, ${limit.value} °C, is not above its temperature at rated load, ${ratedTemperature.value.toFixed(0)} °C`;
  const times = lockedRotorTimes(thermal);
  if (thermal?.cageHeatCapacity != null) {
    const stated = { value: 0, unit: 'J/K', source: '' };
    const heatCapacity = givenOr('heat capacity of the cage', thermal.cageHeatCapacity, stated);
    return { heatCapacity, limit, ratedTemperature, lockedRotorTimes: times };
  }
  const loss = lossPerShare(machine, supply, bodies);
  const capacityFrom = (time: ThermalParameter | null, begin: number) =>
    time === null ? Number.POSITIVE_INFINITY : (loss * time.value) / (limit.value - begin);
  const words = [
    times.cold && `${times.cold.value} s from cold`,
    times.hot && `${times.hot.value} s from hot`,
  ];
  const heatCapacity = derivedParameter(
    'heat capacity of the cage',
    Math.min(capacityFrom(times.cold, ambient), capacityFrom(times.hot, ratedTemperature.value)),
    'J/K',
    `the loss of the locked rotor heats it to its limit in ${words.filter(Boolean).join(' and ')}, without cooling`,
  );
  return { heatCapacity, limit, ratedTemperature, lockedRotorTimes: times };
}

/** A wound rotor is insulated: the temperature of its class is its limit; words where the class is missing. */
function woundLimit(thermal: ThermalData | undefined): SourcedValue | string {
  const insulationClass = thermal?.insulationClass ?? null;
  if (insulationClass === null)
    return thermal?.cageLimit == null
      ? 'a wound rotor is insulated, and neither thermal.insulationClass nor thermal.cageLimit is stated'
      : { value: thermal.cageLimit, unit: '°C', source: '' };
  const source = `a wound rotor: temperature of its thermal class ${insulationClass} (IEC 60085, from memory), taken as that of the stator`;
  return { value: Number(insulationClass), unit: '°C', source };
}

/** Stated, else as the two stated times give it, else typical. */
function temperatureAtRatedLoad(
  thermal: ThermalData | undefined,
  limit: number,
  windingTemperature: number,
  coolest: number,
): ThermalParameter {
  const name = 'temperature of the cage at rated load and 40 °C';
  const { value: over, source } = TYPICAL_THERMAL.cageOverWinding;
  const typical = givenOr(name, thermal?.cageRatedTemperature, {
    value: windingTemperature + over,
    unit: '°C',
    source: `${source}: ${over} K`,
  });
  const { lockedRotorTimeCold: cold = null, lockedRotorTimeHot: hot = null } = thermal ?? {};
  if (cold === null || hot === null) return typical;
  const ambient = STANDARD_LIMITS.referenceAmbient.value;
  const fromTimes = limit - ((limit - ambient) * hot) / cold;
  const words = `the two locked-rotor times give ${fromTimes.toFixed(0)} °C`;
  if (typical.origin === 'given') return { ...typical, source: `scenario; ${words}` };
  if (fromTimes <= coolest)
    return { ...typical, source: `${typical.source}; ${words}, which cannot be: the frame is hotter` };
  return derivedParameter(name, fromTimes, '°C', words);
}

/** Largest loss of a body at locked rotor over its share of the heat capacity, W. */
function lossPerShare(machine: MachineData, supply: Supply, bodies: CageBodies): number {
  const { rotorCurrents } = steadyState(machine, supply, 1);
  const losses = perBody(
    machine.cages.map(({ Rr }, j) => 3 * squared(magnitude(rotorCurrents[j]!)) * Rr),
    bodies,
  );
  if (bodies.outer === null) return losses.cage;
  return Math.max(losses.cage / (1 - bodies.outerShare), losses.outerCage / bodies.outerShare);
}
