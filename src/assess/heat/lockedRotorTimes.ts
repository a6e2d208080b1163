import type { ThermalData } from '../../scenario/scenario.ts';
import { STANDARD_LIMITS } from '../standardLimits.ts';
import type { ThermalParameter } from './thermalNetwork.ts';
import { givenOr } from './thermalParameter.ts';

/** How long the locked rotor is withstood, s. */
export interface LockedRotorTimes {
  /** From ambient temperature; null: not stated. */
  readonly cold: ThermalParameter | null;
  /** From the temperature of rated load; null: only the other is stated. */
  readonly hot: ThermalParameter | null;
}

/** As stated; where neither is, the least from hot that NEMA MG 1 demands, marked as such. */
export function lockedRotorTimes(thermal: ThermalData | undefined): LockedRotorTimes {
  const cold = thermal?.lockedRotorTimeCold ?? null;
  const hot = thermal?.lockedRotorTimeHot ?? null;
  const time = (from: string, given: number | null) =>
    givenOr(`locked rotor withstood from ${from}`, given, STANDARD_LIMITS.stallTime, 'standard');
  return {
    cold: cold === null ? null : time('cold', cold),
    hot: hot === null && cold !== null ? null : time('hot', hot),
  };
}
