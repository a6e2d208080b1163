import type { MeanDuties } from '../../measure/meanDuties.ts';
import type { ContactorData, ContactorsData, DutyData } from '../../scenario/scenario.ts';
import type { ContactorName } from '../../starter/starter.ts';
import type { WearPlant } from './breakingWear.ts';
import { categoryAdvice } from './categoryAdvice.ts';
import { type LifeBasis, lifeBasis } from './contactLife.ts';
import {
  type BreakingOccasion,
  type ContactorWear,
  type ContactWear,
  type CountRange,
  WEAR_EVENTS,
  type WearEvent,
} from './contactWearTypes.ts';
import { type DutyCounts, dutyCounts } from './dutyCounts.ts';
import { EVENT_PARTS } from './eventParts.ts';
import { mixedLife } from './mixedLife.ts';
import { leftOf, replacement } from './replacement.ts';
import { type WearParts, wearOfEvent, wearParts } from './wearParts.ts';
import { worstPole } from './worstPole.ts';

/**
 * What the contactors of a scenario lose: by event, and in the duty until their contacts are to be replaced.
 *
 * A normal stop is a start and the breaking of the running current; a plug stop is that, and the making and breaking of the
 * other contactor; in full reversals each contactor takes each part in turn. Breakings are simulated, but for inching, which is
 * estimated from the circuit at rest.
 *
 * @param means of the scenario over instants of opening
 * @param duty null: not stated; only the wear of each event is then known
 */
export function contactWear(
  means: MeanDuties,
  contactors: ContactorsData,
  duty: DutyData | null,
  plant: WearPlant,
): ContactWear {
  const counts = duty === null ? null : dutyCounts(duty);
  const of = (contactor: ContactorName) =>
    contactorWear(contactor, contactors[contactor], means, duty, counts, plant);
  const forward = of('forward');
  const reverse = of('reverse');
  const closings = counts === null ? null : counts.drivingClosings + counts.pluggingClosings;
  return {
    forward,
    reverse,
    governing: firstToWear(forward, reverse),
    interlockOperations: operationsFor(contactors.interlockMechanicalLife, closings),
    switchOperations: operationsFor(contactors.switchMechanicalLife, counts?.switchClosings ?? null),
  };
}

/** One whose wear is not known may be the first. */
function firstToWear(forward: ContactorWear, reverse: ContactorWear): ContactorName | null {
  if (forward.wearUnknown || reverse.wearUnknown) return null;
  const lasts = (wear: ContactorWear) => wear.operations?.value ?? Number.POSITIVE_INFINITY;
  if (forward.operations === null && reverse.operations === null) return null;
  return lasts(reverse) < lasts(forward) ? 'reverse' : 'forward';
}

/** Operations until so many movements are done, at so many for each operation. */
function operationsFor(movements: number | null, perOperation: number | null): number | null {
  return movements === null || perOperation === null || perOperation === 0 ? null : movements / perOperation;
}

function contactorWear(
  contactor: ContactorName,
  device: ContactorData,
  means: MeanDuties,
  duty: DutyData | null,
  counts: DutyCounts | null,
  plant: WearPlant,
): ContactorWear {
  const role = contactor === means.driving ? 'driving' : 'plugging';
  const parts = wearParts(role, device, means, plant);
  const used = counts === null ? WEAR_EVENTS : WEAR_EVENTS.filter((event) => counts.events[event] > 0);
  const shares = used.map((event) => ({
    event,
    share: counts?.events[event] ?? 0,
    wear: wearOfEvent(event, role, parts),
  }));
  const breaks = (event: WearEvent) => EVENT_PARTS[role][event].breaks !== undefined;
  const wearUnknown = counts === null || shares.some(({ event, wear }) => wear === null && breaks(event));
  const value = wearUnknown
    ? null
    : mixedLife(
        // A making that is not judged counts for nothing here; `missing` says so.
        shares.flatMap(({ share, wear }) => (wear === null || wear === 0 ? [] : [{ share, life: 1 / wear }])),
      );
  const basis = lifeBasis(device);
  const pole = counts === null ? null : worstPole(parts.breakings, counts.events, role);
  const operations = value === null ? null : rangeOf(value, basis, pole?.factor ?? 1);
  const closings =
    counts === null ? null : role === 'driving' ? counts.drivingClosings : counts.pluggingClosings;
  const inUse = partsInUse(role, parts, used);
  return {
    contactor,
    role,
    basis,
    breakings: inUse.breakings,
    makings: inUse.makings,
    perEvent: Object.fromEntries(
      WEAR_EVENTS.map((event) => [event, wearOfEvent(event, role, parts)]),
    ) as Record<WearEvent, number | null>,
    wearUnknown,
    operations,
    operationsLeft: leftOf(operations, duty?.operationsSince ?? null),
    replacement: replacement(operations, duty),
    worstPole: pole,
    closingsPerOperation: closings,
    mechanicalOperations: operationsFor(device.mechanicalLife, closings),
    ...categoryAdvice(device, inUse.breakings, duty),
    missing: [...inUse.missing, ...missingData(device, duty)],
    remarks: inUse.remarks,
  };
}

/** The worst pole decides about the earliest replacement. */
function rangeOf(value: number, { lowFactor, highFactor }: LifeBasis, worst: number): CountRange {
  return { value, low: (value * lowFactor) / worst, high: value * highFactor };
}

const OCCASION_WORDS: Readonly<Record<BreakingOccasion, string>> = {
  running: 'breaking the running current',
  plugging: 'breaking at the end of plugging',
  inching: 'breaking while inching',
};

/** The parts that some events consist of, with what is missing and to be remarked of them. */
function partsInUse(role: 'driving' | 'plugging', parts: WearParts, events: readonly WearEvent[]) {
  const wants = events.map((event) => EVENT_PARTS[role][event]);
  const occasions = (['running', 'plugging', 'inching'] as const).filter((occasion) =>
    wants.some(({ breaks }) => breaks === occasion),
  );
  const makings = Object.fromEntries(
    (['start', 'plugging'] as const)
      .filter((occasion) => wants.some(({ makes }) => makes === occasion))
      .flatMap((occasion) => {
        const erosion = parts.makings[occasion];
        return erosion === undefined ? [] : [[occasion, erosion]];
      }),
  ) as WearParts['makings'];
  const breakings = occasions.flatMap((occasion) => parts.breakings[occasion] ?? []);
  const erosions = Object.values(makings);
  return {
    breakings,
    makings,
    missing: [
      ...occasions.flatMap((occasion) => {
        const why = parts.missing[occasion];
        return why === undefined ? [] : [`${OCCASION_WORDS[occasion]} is not judged because ${why}`];
      }),
      ...new Set(erosions.flatMap(({ wear, remark }) => (wear === null ? [remark] : []))),
    ],
    remarks: [
      ...breakings.flatMap(({ occasion, life }) =>
        life.remark === '' ? [] : [`${OCCASION_WORDS[occasion]}: ${life.remark}`],
      ),
      ...new Set(erosions.flatMap(({ wear, remark }) => (wear === null ? [] : [remark]))),
    ],
  };
}

/** What the scenario does not say, in words. */
function missingData(device: ContactorData, duty: DutyData | null): string[] {
  if (duty === null) return ['operations to replacement are not known because the section duty is missing'];
  const absent = (['operationsPerDay', 'contactsChanged'] as const).filter((key) => duty[key] === null);
  return [
    ...(absent.length === 0
      ? []
      : [
          `the date of replacement is not known because ${absent.map((key) => `duty.${key}`).join(' and ')} ${absent.length === 1 ? 'is' : 'are'} missing`,
        ]),
    ...(device.mechanicalLife === null
      ? ['mechanical wear is not judged because mechanicalLife is missing']
      : []),
  ];
}
