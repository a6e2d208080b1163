import type { Action, InitialState, StarterData } from '../scenario/scenario.ts';

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
  /** Sorted by time, then by order of entry. */
  readonly agenda: readonly Scheduled[];
}

/** What is bound to happen at a known time. */
export type Scheduled = { readonly t: number } & ScheduledChange;

/** A change without its time. */
export type ScheduledChange =
  | { readonly kind: 'action'; readonly action: Action }
  | { readonly kind: 'energise'; readonly contactor: ContactorName }
  | { readonly kind: 'touch'; readonly contactor: ContactorName; readonly pole: number }
  | { readonly kind: 'part'; readonly contactor: ContactorName; readonly pole: number }
  | { readonly kind: 'mayClear'; readonly contactor: ContactorName; readonly pole: number }
  | { readonly kind: 'contact'; readonly direction: Direction; readonly closed: boolean };

/** The other contactor. */
export function opposite(contactor: ContactorName): ContactorName {
  return contactor === 'forward' ? 'reverse' : 'forward';
}

/** Starter at t = 0, with the actions on its agenda. */
export function initialStarter(
  data: StarterData,
  actions: readonly Action[],
  initial: InitialState,
): StarterState {
  const running = initial === 'rest' ? null : initial === 'runningForward' ? 'forward' : 'reverse';
  const allOpen: Poles = ['open', 'open', 'open'];
  const allClosed: Poles = ['closed', 'closed', 'closed'];
  const never: readonly [boolean, boolean, boolean] = [false, false, false];
  const runs = { forward: running === 'forward', reverse: running === 'reverse' };
  return {
    data,
    coil: runs,
    poles: { forward: runs.forward ? allClosed : allOpen, reverse: runs.reverse ? allClosed : allOpen },
    mayClear: { forward: never, reverse: never },
    releasedAt: { forward: Number.NEGATIVE_INFINITY, reverse: Number.NEGATIVE_INFINITY },
    pickedUp: runs,
    contact: runs,
    plugging: null,
    agenda: actions.map((action) => ({ t: action.at, kind: 'action', action })),
  };
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

/** True when no contactor conducts, is energised, or is about to be. */
export function isIdle(state: StarterState): boolean {
  const quiet = (contactor: ContactorName) =>
    !state.coil[contactor] && state.poles[contactor].every((pole) => pole === 'open');
  return quiet('forward') && quiet('reverse') && state.agenda.every((entry) => entry.kind === 'contact');
}
