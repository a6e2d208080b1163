import { faultImpossibilities } from '../faultChecks.ts';
import type { Scenario, StarterFault } from '../scenario.ts';
import { viewOfData } from '../starterView.ts';

/** What a fault is told apart by. */
export type FaultKind = StarterFault['kind'];

/** Every kind of fault by its name, in the order of a list to choose from. */
export const FAULT_NAMES: Readonly<Record<FaultKind, string>> = {
  lostPhase: 'lost phase',
  supplyLost: 'supply lost',
  weldedContactor: 'welded contactor',
  weldedPole: 'welded pole',
  deadPole: 'dead pole',
  zeroSpeedSwitch: 'zero-speed switch',
  auxiliaryContact: 'auxiliary contact',
  mechanicalInterlockMissing: 'mechanical interlock missing',
  overloadNeverTrips: 'overload never trips',
};

/** The kinds in that order. */
export const FAULT_KINDS = Object.keys(FAULT_NAMES) as readonly FaultKind[];

/** Something about a fault that can be chosen. */
export type FaultField =
  | {
      readonly kind: 'choice';
      readonly name: string;
      readonly label: string;
      readonly value: string;
      readonly options: Readonly<Record<string, string>>;
    }
  /** s; null: never. */
  | { readonly kind: 'time'; readonly name: string; readonly label: string; readonly value: number | null };

const CONTACTORS = { forward: 'forward', reverse: 'reverse' };
const PHASES = { A: 'A', B: 'B', C: 'C' };

/** s; when a fault that a hand adds begins: after an ordinary start. */
const BEGINS = 1;

/** A fault of a kind with the first of its choices. */
export function newFault(kind: FaultKind): StarterFault {
  switch (kind) {
    case 'lostPhase':
      return { kind, phase: 'A', from: BEGINS };
    case 'weldedPole':
    case 'deadPole':
      return { kind, contactor: 'forward', pole: 'A' };
    case 'weldedContactor':
      return { kind, contactor: 'forward' };
    case 'zeroSpeedSwitch':
      return { kind, mode: 'stuckClosed' };
    case 'auxiliaryContact':
      return { kind, contactor: 'forward', contact: 'interlock', stuck: 'closed' };
    case 'supplyLost':
      return { kind, from: BEGINS, until: null };
    case 'overloadNeverTrips':
    case 'mechanicalInterlockMissing':
      return { kind };
    default:
      return kind satisfies never;
  }
}

/** What can be chosen about a fault. */
export function faultFields(fault: StarterFault): readonly FaultField[] {
  const choice = (name: string, label: string, options: Readonly<Record<string, string>>): FaultField => ({
    kind: 'choice',
    name,
    label,
    value: String((fault as unknown as Readonly<Record<string, unknown>>)[name]),
    options,
  });
  switch (fault.kind) {
    case 'lostPhase':
      return [
        choice('phase', 'Phase', PHASES),
        { kind: 'time', name: 'from', label: 'From', value: fault.from },
      ];
    case 'weldedPole':
    case 'deadPole':
      return [choice('contactor', 'Contactor', CONTACTORS), choice('pole', 'Pole', PHASES)];
    case 'weldedContactor':
      return [choice('contactor', 'Contactor', CONTACTORS)];
    case 'zeroSpeedSwitch':
      return [
        choice('mode', 'How', {
          stuckClosed: 'stuck closed',
          stuckOpen: 'stuck open',
          doesNotPickUp: 'does not pick up',
        }),
      ];
    case 'auxiliaryContact':
      return [
        choice('contactor', 'Contactor', CONTACTORS),
        choice('contact', 'Contact', { interlock: 'interlock', holdIn: 'hold-in' }),
        choice('stuck', 'Stuck', { open: 'open', closed: 'closed' }),
      ];
    case 'supplyLost':
      return [
        { kind: 'time', name: 'from', label: 'From', value: fault.from },
        { kind: 'time', name: 'until', label: 'Until (empty: never)', value: fault.until },
      ];
    case 'overloadNeverTrips':
    case 'mechanicalInterlockMissing':
      return [];
    default:
      return fault satisfies never;
  }
}

/** The fault with one thing chosen otherwise; a choice that it does not have leaves it as it is. */
export function withFaultField(
  fault: StarterFault,
  name: string,
  value: string | number | null,
): StarterFault {
  const field = faultFields(fault).find((one) => one.name === name);
  if (field === undefined) return fault;
  const fits =
    field.kind === 'choice'
      ? typeof value === 'string' && Object.hasOwn(field.options, value)
      : typeof value === 'number' || (value === null && name === 'until');
  return fits ? ({ ...fault, [name]: value } as StarterFault) : fault;
}

/** Why a scenario cannot have a fault beside those it has; null: it can. */
export function whyNoFault({ starter }: Pick<Scenario, 'starter'>, fault: StarterFault): string | null {
  const faults = [...(starter.faults ?? []), fault];
  const last = faults.length - 1;
  const found = faultImpossibilities(viewOfData(starter), faults).find(({ path }) => path[2] === last);
  return found === undefined ? null : found.message;
}
