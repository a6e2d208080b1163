import { renderFault } from './renderFault.ts';
import type { StarterFault } from './starterData.ts';
import type { Impossibility, StarterView } from './starterView.ts';

type Found = Omit<Impossibility, 'path'> & { readonly key?: string };

/**
 * Faults of what is not there, and faults that exclude each other.
 *
 * @param view the starter
 * @param faults in order; undefined where one is not known
 */
export function faultImpossibilities(
  view: StarterView,
  faults: readonly (StarterFault | undefined)[],
): readonly Impossibility[] {
  const seen = new Map<string, StarterFault>();
  return faults.flatMap((fault, index) => {
    if (fault === undefined) return [];
    const found = [...ofNothing(view, fault), ...ofTime(fault), ...beside(seen, fault)];
    for (const place of placesOf(fault)) seen.set(place, fault);
    return found.map(({ key, ...words }) => {
      const path = ['starter', 'faults', index, ...(key === undefined ? [] : [key])];
      return { path, ...words };
    });
  });
}

/** The part that is at fault must exist. */
function ofNothing({ control, hasSwitch }: StarterView, fault: StarterFault): Found[] {
  const orNone = (message: string, expected: string) => [
    { message, expected: `${expected}, or this fault left out` },
  ];
  switch (fault.kind) {
    case 'zeroSpeedSwitch':
      return hasSwitch === false
        ? orNone(
            'is a fault of a switch that is not there',
            '`zeroSpeedSwitch` under starter with its speeds',
          )
        : [];
    case 'auxiliaryContact':
    case 'overloadNeverTrips':
    case 'mechanicalInterlockMissing':
      if (control === null)
        return orNone('has no meaning without a control circuit', '`control` under starter');
      break;
    default:
      return [];
  }
  if (fault.kind === 'overloadNeverTrips' && control.hasOverload === false)
    return orNone('is a fault of an overload relay that is not there', '`overload` under control');
  if (fault.kind === 'mechanicalInterlockMissing' && control.mechanicalInterlock === false)
    return orNone('is missing a mechanical interlock where there is none', '`mechanicalInterlock: yes`');
  if (fault.kind !== 'auxiliaryContact' || fault.contact !== 'holdIn') return [];
  if (control.scheme === 'jog')
    return orNone('is a fault of a hold-in contact, which inching does without', '`contact: interlock`');
  if (control.scheme === 'plugStop' && fault.contactor === 'reverse')
    return orNone(
      'is a fault of a hold-in contact that is not there: in plug to stop the reverse contactor only brakes',
      '`contactor: forward`, or `contact: interlock`',
    );
  return [];
}

function ofTime(fault: StarterFault): Found[] {
  if (fault.kind !== 'supplyLost' || fault.until === null || fault.until > fault.from) return [];
  return [
    {
      key: 'until',
      message: 'is not after the supply is lost',
      expected: `\`never\` or a time after ${fault.from} s`,
    },
  ];
}

/** One place has one fault. */
function beside(seen: ReadonlyMap<string, StarterFault>, fault: StarterFault): Found[] {
  const place = placesOf(fault).find((one) => seen.has(one));
  if (place === undefined) return [];
  const before = seen.get(place)!;
  const expected = 'one fault in one place';
  if (before.kind === fault.kind) {
    const whole = 'pole' in fault ? place : wholeOf(fault, place);
    return [{ message: `repeats the fault of ${whole}`, expected }];
  }
  const word = renderFault(before).kind;
  const message =
    before.kind === 'weldedContactor' || fault.kind === 'weldedContactor'
      ? `stands beside the ${word} of the same contactor`
      : `contradicts the ${word}: ${place} cannot be both`;
  return [{ message, expected }];
}

function wholeOf(fault: StarterFault, place: string): string {
  return fault.kind === 'weldedContactor' ? `the ${fault.contactor} contactor` : place;
}

function placesOf(fault: StarterFault): readonly string[] {
  switch (fault.kind) {
    case 'lostPhase':
      return [`phase ${fault.phase}`];
    case 'weldedPole':
    case 'deadPole':
      return [`pole ${fault.pole} of ${fault.contactor}`];
    case 'weldedContactor':
      return ['A', 'B', 'C'].map((pole) => `pole ${pole} of ${fault.contactor}`);
    case 'zeroSpeedSwitch':
      return ['the zero-speed switch'];
    case 'auxiliaryContact': {
      const contact = fault.contact === 'holdIn' ? 'hold-in' : fault.contact;
      return [`the ${contact} contact of the ${fault.contactor} contactor`];
    }
    case 'overloadNeverTrips':
      return ['the overload relay'];
    case 'supplyLost':
      return ['the supply'];
    case 'mechanicalInterlockMissing':
      return ['the mechanical interlock'];
    default:
      return fault satisfies never;
  }
}
