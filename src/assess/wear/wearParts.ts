import type { MeanDuties, MeanMaking } from '../../measure/meanDuties.ts';
import type { ContactorData } from '../../scenario/scenario.ts';
import { opposite } from '../../starter/starter.ts';
import { breakingWear, type WearPlant } from './breakingWear.ts';
import {
  type BreakingOccasion,
  type BreakingWear,
  type MakingOccasion,
  WEAR_EVENTS,
  type WearEvent,
} from './contactWearTypes.ts';
import { EVENT_PARTS } from './eventParts.ts';
import { type MakeErosion, makeErosion } from './makeErosion.ts';

/** What one contactor makes and breaks, and what of it is not known. */
export interface WearParts {
  readonly breakings: Partial<Record<BreakingOccasion, BreakingWear>>;
  readonly makings: Partial<Record<MakingOccasion, MakeErosion>>;
  readonly missing: Partial<Record<BreakingOccasion | MakingOccasion, string>>;
}

/** Everything that events may ask of a contactor in this role. */
export function wearParts(
  role: 'driving' | 'plugging',
  device: ContactorData,
  means: MeanDuties,
  plant: WearPlant,
): WearParts {
  const breakings: WearParts['breakings'] = {};
  const makings: WearParts['makings'] = {};
  const missing: WearParts['missing'] = {};
  for (const event of WEAR_EVENTS) {
    const { breaks, makes } = EVENT_PARTS[role][event];
    if (breaks !== undefined) {
      const wear = breakingWear(breaks, means, device, plant);
      if ('missing' in wear) missing[breaks] = wear.missing;
      else breakings[breaks] = wear;
    }
    if (makes !== undefined) makings[makes] = erosionOf(makes, means, device, plant);
  }
  return { breakings, makings, missing };
}

function erosionOf(
  occasion: MakingOccasion,
  means: MeanDuties,
  device: ContactorData,
  { supply, initial }: WearPlant,
): MakeErosion {
  const making = makingOf(occasion, means, initial !== 'rest');
  if (making !== undefined) return makeErosion(making, device, supply.lineVoltage, supply.frequency);
  const what = occasion === 'start' ? 'the run holds no start' : 'the run holds no plugging';
  return {
    bounceCharge: null,
    contained: null,
    wear: null,
    remark: `make erosion is not judged because ${what}`,
  };
}

function makingOf(
  occasion: MakingOccasion,
  { makings, driving }: MeanDuties,
  running: boolean,
): MeanMaking | undefined {
  if (occasion === 'plugging') return makings.find(({ contactor }) => contactor === opposite(driving));
  // A machine that runs at t = 0 has been started before; what its contactor makes later is no start.
  return running ? undefined : makings.find(({ contactor }) => contactor === driving);
}

/** Share of the contacts that one event uses up; null: a breaking of it is not known, or all there is to it is a making not judged. */
export function wearOfEvent(event: WearEvent, role: 'driving' | 'plugging', parts: WearParts): number | null {
  const { breaks, makes, times } = EVENT_PARTS[role][event];
  if (times === 0) return 0;
  const making = makes === undefined ? 0 : (parts.makings[makes]?.wear ?? null);
  if (breaks === undefined) return making === null ? null : times * making;
  const breaking = parts.breakings[breaks];
  return breaking === undefined ? null : times * (1 / breaking.life.operations + (making ?? 0));
}
