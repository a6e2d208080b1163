import type { ContactorData } from '../../scenario/scenario.ts';
import { STANDARD_LIMITS } from '../standardLimits.ts';

/** A rated capacity and where it comes from. */
export interface SwitchingCapacity {
  /** A r.m.s. */
  readonly current: number;
  readonly source: string;
}

/** What a contactor can make: as stated, or the larger of what its ratings in AC-3 and AC-4 demand. */
export function makingCapacity(device: ContactorData): SwitchingCapacity {
  const { makingAc3, makingAc4 } = STANDARD_LIMITS;
  return capacity(device, device.makingCapacity, 'makingCapacity', makingAc3, makingAc4);
}

/** What a contactor can break. */
export function breakingCapacity(device: ContactorData): SwitchingCapacity {
  const { breakingAc3, breakingAc4 } = STANDARD_LIMITS;
  return capacity(device, device.breakingCapacity, 'breakingCapacity', breakingAc3, breakingAc4);
}

interface Multiple {
  readonly value: number;
  readonly source: string;
}

function capacity(
  device: ContactorData,
  stated: number | null,
  key: string,
  inAc3: Multiple,
  inAc4: Multiple,
): SwitchingCapacity {
  if (stated !== null) return { current: stated, source: `stated in the scenario (contactors, ${key})` };
  const byAc3 = {
    current: inAc3.value * device.ratedCurrentAc3,
    source: `${inAc3.value} × Ie: ${inAc3.source}`,
  };
  if (device.ratedCurrentAc4 === null) return byAc3;
  const byAc4 = {
    current: inAc4.value * device.ratedCurrentAc4,
    source: `${inAc4.value} × Ie: ${inAc4.source}`,
  };
  return byAc4.current > byAc3.current ? byAc4 : byAc3;
}
