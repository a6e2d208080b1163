import type {
  Action,
  InitialState,
  PhaseName,
  RotorResistorData,
  StarterData,
  StarterFault,
} from '../scenario/scenario.ts';
import type { CoilDevice } from './control/controlCircuit.ts';
import { type ControlState, initialControl, type Outputs, type Root } from './control/controlState.ts';

/** One of the two contactors. */
export type ContactorName = 'forward' | 'reverse';
/** Direction of rotation, named after the contactor that drives it. */
export type Direction = ContactorName;

/** open: no current; closed: contacts touch; arcing: contacts have parted, the arc still conducts. */
export type PoleState = 'open' | 'closed' | 'arcing';

/** Poles by motor terminal A, B, C. */
export type Poles = readonly [PoleState, PoleState, PoleState];

/** The discrete state of the starter. Plain data; transitions return a new one. */
export interface StarterState {
  readonly data: StarterData;
  readonly coil: Readonly<Record<ContactorName, boolean>>;
  readonly poles: Readonly<Record<ContactorName, Poles>>;
  /** Poles that may clear at a current zero: the minimum arcing time is over. */
  readonly mayClear: Readonly<Record<ContactorName, readonly [boolean, boolean, boolean]>>;
  /** Last time each coil was released, s; −∞ if never. */
  readonly releasedAt: Readonly<Record<ContactorName, number>>;
  /** Zero-speed switch: speed has picked up (hysteresis), and the contact after its delay. */
  readonly pickedUp: Readonly<Record<Direction, boolean>>;
  readonly contact: Readonly<Record<Direction, boolean>>;
  /** The contactor that plugs, with the direction of rotation it brakes; null when none does. */
  readonly plugging: { readonly contactor: ContactorName; readonly braking: Direction } | null;
  /** The direction of rotation that the last start or plug opposes; null when it opposes none. */
  readonly opposing: Direction | null;
  /** The control circuit that drives the coils; null: commands do. */
  readonly control: ControlState | null;
  /** Upstream poles by supply phase: closed until that phase is lost. */
  readonly lines: Poles;
  /** Contactor that bypasses the line resistors. */
  readonly bypass: { readonly coil: boolean; readonly closed: boolean };
  /** The mechanical brake's torque acts on the shaft. */
  readonly braked: boolean;
  /** Direct current in two leads: fed by the rectifier, or kept up by the winding through its diodes. */
  readonly injection: 'off' | 'fed' | 'freewheeling';
  /** Resistors at the slip rings; null: none. */
  readonly rotor: RotorResistorData | null;
  /** External rotor resistance in the circuit now, Ω. */
  readonly rotorResistance: number;
  /** How a delta machine's windings are connected: as built, or in star; and how they shall be once no pole conducts. */
  readonly winding: WindingConnection;
  readonly windingWanted: WindingConnection;
  /** Sorted by time, then by order of entry. */
  readonly agenda: readonly Scheduled[];
}

/** As built (a delta machine: in delta), or in star for plugging. */
export type WindingConnection = 'built' | 'star';

/** What is bound to happen at a known time. */
export type Scheduled = { readonly t: number } & ScheduledChange;

/** A change without its time. */
export type ScheduledChange =
  | { readonly kind: 'action'; readonly action: Action }
  | { readonly kind: 'energise'; readonly contactor: ContactorName }
  | { readonly kind: 'touch'; readonly contactor: ContactorName; readonly pole: number }
  | { readonly kind: 'part'; readonly contactor: ContactorName; readonly pole: number }
  | { readonly kind: 'mayClear'; readonly contactor: ContactorName; readonly pole: number }
  | { readonly kind: 'contact'; readonly direction: Direction; readonly closed: boolean }
  | { readonly kind: 'bypassEnergise' }
  | { readonly kind: 'bypassMoves'; readonly closed: boolean }
  /** External rotor resistance from now on, Ω. */
  | { readonly kind: 'rotorStep'; readonly resistance: number }
  | { readonly kind: 'brakeSets' }
  | { readonly kind: 'injectionCloses' }
  | { readonly kind: 'injectionEnds'; readonly cause: string }
  | { readonly kind: 'phaseLost'; readonly phase: number }
  | { readonly kind: 'supplyChanges'; readonly present: boolean }
  /** A relay, a timer's contact, a solenoid or a contactor's armature moves. */
  | { readonly kind: 'deviceMoves'; readonly device: CoilDevice; readonly actuated: boolean }
  /** A program reads its inputs; a scan later it writes what it made of them. */
  | { readonly kind: 'scanReads'; readonly cause: string; readonly root: Root }
  | { readonly kind: 'scanWrites'; readonly outputs: Outputs; readonly cause: string; readonly root: Root };

/** The other contactor. */
export function opposite(contactor: ContactorName): ContactorName {
  return contactor === 'forward' ? 'reverse' : 'forward';
}

/**
 * Starter at t = 0, with the actions and the faults on its agenda. A running machine has its resistors bypassed.
 *
 * @param rotor resistors at the slip rings; null: none
 */
export function initialStarter(
  data: StarterData,
  actions: readonly Action[],
  initial: InitialState,
  rotor: RotorResistorData | null = null,
): StarterState {
  const running = initial === 'rest' ? null : initial === 'runningForward' ? 'forward' : 'reverse';
  const allOpen: Poles = ['open', 'open', 'open'];
  const allClosed: Poles = ['closed', 'closed', 'closed'];
  const never: readonly [boolean, boolean, boolean] = [false, false, false];
  const runs = { forward: running === 'forward', reverse: running === 'reverse' };
  const shows = switchIsBlind(data) ? { forward: false, reverse: false } : runs;
  const start: StarterState = {
    data,
    coil: runs,
    poles: { forward: runs.forward ? allClosed : allOpen, reverse: runs.reverse ? allClosed : allOpen },
    mayClear: { forward: never, reverse: never },
    releasedAt: { forward: Number.NEGATIVE_INFINITY, reverse: Number.NEGATIVE_INFINITY },
    pickedUp: runs,
    contact: shows,
    plugging: null,
    opposing: null,
    control: initialControl(data, initial, shows),
    lines: allClosed,
    bypass: { coil: running !== null, closed: running !== null },
    braked: false,
    injection: 'off',
    rotor,
    rotorResistance: 0,
    winding: 'built',
    windingWanted: 'built',
    agenda: actions.map((action) => ({ t: action.at, kind: 'action', action })),
  };
  return (data.faults ?? []).reduce<StarterState>(withFaultScheduled, start);
}

function withFaultScheduled(state: StarterState, fault: StarterFault): StarterState {
  if (fault.kind === 'lostPhase')
    return schedule(state, { t: fault.from, kind: 'phaseLost', phase: PHASES.indexOf(fault.phase) });
  if (fault.kind !== 'supplyLost') return state;
  const lost = schedule(state, { t: fault.from, kind: 'supplyChanges', present: false });
  return fault.until === null
    ? lost
    : schedule(lost, { t: fault.until, kind: 'supplyChanges', present: true });
}

/** Motor terminals, and supply phases, in the order of the poles. */
export const PHASES: readonly [PhaseName, PhaseName, PhaseName] = ['A', 'B', 'C'];

/** True when a pole has the named fault. */
export function hasFault(
  data: StarterData,
  kind: 'weldedPole' | 'deadPole',
  contactor: ContactorName,
  pole: number,
): boolean {
  return (data.faults ?? []).some(
    (fault) =>
      (fault.kind === kind && fault.contactor === contactor && fault.pole === PHASES[pole]) ||
      (kind === 'weldedPole' && fault.kind === 'weldedContactor' && fault.contactor === contactor),
  );
}

/** True when nothing that the zero-speed switch could show reaches anybody. */
export function switchIsBlind(data: StarterData): boolean {
  return (data.faults ?? []).some(
    (fault) =>
      fault.kind === 'zeroSpeedSwitch' &&
      (fault.mode === 'doesNotPickUp' || (fault.mode === 'stuckOpen' && data.control === undefined)),
  );
}

/** True when the zero-speed switch stays actuated once it is. */
export function switchSticks(data: StarterData): boolean {
  return (data.faults ?? []).some(
    (fault) => fault.kind === 'zeroSpeedSwitch' && fault.mode === 'stuckClosed',
  );
}

/** Time of the next scheduled change, s; +∞ when nothing is scheduled. */
export function nextScheduled(state: StarterState): number {
  return state.agenda[0]?.t ?? Number.POSITIVE_INFINITY;
}

/** Adds a change, after all others at the same time. */
export function schedule(state: StarterState, entry: Scheduled): StarterState {
  const at = state.agenda.findIndex((other) => other.t > entry.t);
  const agenda = [...state.agenda];
  agenda.splice(at < 0 ? agenda.length : at, 0, entry);
  return { ...state, agenda };
}

/** Removes the changes that a predicate names. */
export function cancel(state: StarterState, which: (entry: Scheduled) => boolean): StarterState {
  return { ...state, agenda: state.agenda.filter((entry) => !which(entry)) };
}
