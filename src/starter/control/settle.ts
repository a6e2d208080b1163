import { energiseBypass, setRotorResistance, startRotorSteps } from '../auxiliaries.ts';
import { releaseCoil } from '../commands.ts';
import {
  type ContactorName,
  cancel,
  opposite,
  type Scheduled,
  type StarterState,
  schedule,
} from '../starter.ts';
import type { StarterEvent } from '../starterEvent.ts';
import type { Transition } from '../transition.ts';
import type { Branch, CoilCircuit, CoilDevice } from './controlCircuit.ts';
import { branchesAskedFor, type ControlState, isContactor } from './controlState.ts';
import { conductingBranches, networkConducts, wiredPartConducts, wiringConducts } from './evaluate.ts';

/**
 * Coils take the state that contacts and control voltage give them; what has to move is put on the agenda. Called after every
 * change of an input, an armature or the voltage.
 *
 * @param cause what has changed, in words
 */
export function settleControl(state: StarterState, t: number, cause: string): Transition {
  if (state.control === null) return { state, events: [] };
  let current = planScan(clearOutputs(state), t, cause);
  const events: StarterEvent[] = [];
  for (const one of state.control.circuit.coils) {
    const change = settleCoil(current, t, one, cause);
    current = change.state;
    events.push(...change.events);
  }
  return { state: current, events };
}

/**
 * Ways by which a coil is asked for: those that conduct, or those that a program has written and that its wired contacts still let
 * through. What stands ahead of the feed is wired in any case.
 */
function askedBranches(control: ControlState, one: CoilCircuit): readonly Branch[] {
  const { positions, stuck, outputs } = control;
  if (outputs === null || one.aheadOfFeed === true) return conductingBranches(one, positions, stuck);
  const written = outputs[one.coil] ?? [];
  return one.branches.filter(
    (branch, i) => written.includes(i) && wiredPartConducts(branch.network, positions, stuck),
  );
}

function settleCoil(state: StarterState, t: number, one: CoilCircuit, cause: string): Transition {
  const control = state.control!;
  const { circuit, positions, stuck, coils, voltage } = control;
  const asked = askedBranches(control, one).length > 0;
  const closed = asked && wiringConducts(circuit, one, positions, stuck);
  const on = coils[one.coil] === true;
  const energised = closed && (on ? voltage !== 'low' : voltage === 'high');
  if (energised === on) return on ? revisePurpose(state, t, one, cause) : { state, events: [] };
  const marked = withControl(state, { ...control, coils: { ...coils, [one.coil]: energised } });
  if (isContactor(one.coil)) {
    const contactor = one.coil === 'forwardContactor' ? 'forward' : 'reverse';
    return energised
      ? energiseContactor(marked, t, contactor, one, cause)
      : releaseContactor(marked, t, contactor, cause);
  }
  return { state: planMove(marked, t, one, energised), events: [] };
}

/** The armature of a relay, or the contact of a timer, follows its coil in its own time. */
function planMove(state: StarterState, t: number, one: CoilCircuit, energised: boolean): StarterState {
  const control = state.control!;
  const free = cancel(state, (entry) => entry.kind === 'deviceMoves' && entry.device === one.coil);
  if ((control.positions[one.coil] === true) === energised) return free;
  const at = t + travel(control, one, energised);
  return schedule(free, { t: at, kind: 'deviceMoves', device: one.coil, actuated: energised });
}

function travel(control: ControlState, one: CoilCircuit, energised: boolean): number {
  if (one.delay === undefined) return control.data.relayTime;
  return (one.delay.kind === 'onDelay') === energised ? one.delay.time : 0;
}

function energiseContactor(
  state: StarterState,
  t: number,
  contactor: ContactorName,
  one: CoilCircuit,
  cause: string,
): Transition {
  const control = state.control!;
  const other = opposite(contactor);
  const braking = purposeOf(control, one) === 'brake';
  const turnsAgainst =
    state.data.zeroSpeedSwitch === null
      ? state.releasedAt[other] >= control.root.t
      : state.contact[other] && !state.contact[contactor];
  const opposing = braking || turnsAgainst ? other : null;
  const purpose = braking ? 'brake' : 'command';
  const event: StarterEvent = {
    t,
    kind: 'coilEnergised',
    contactor,
    device: one.coil,
    purpose,
    rootTime: control.root.t,
    rootKind: control.root.kind,
    text: `${contactor} coil energised: ${cause}`,
  };
  const prepared: StarterState = {
    ...state,
    coil: { ...state.coil, [contactor]: true },
    plugging: braking ? { contactor, braking: other } : null,
    opposing,
    windingWanted: braking && state.data.plugConnection === 'star' ? 'star' : 'built',
  };
  const rotor =
    opposing === null
      ? startRotorSteps(energiseBypass(prepared, t), t)
      : setRotorResistance(prepared, t, prepared.rotor?.plugging ?? 0);
  let next = rotor.state;
  const after = state.data.lineResistors?.bypassAfter ?? null;
  if (opposing !== null && after !== null) next = schedule(next, { t: t + after, kind: 'bypassEnergise' });
  const begun = beginToClose(next, t, contactor);
  return { state: begun.state, events: [event, ...rotor.events, ...begun.events] };
}

/** What an energised contactor is there for: a command comes before braking. */
function purposeOf(control: ControlState, one: CoilCircuit): 'command' | 'brake' {
  const branches = askedBranches(control, one);
  const brakes = branches.some(({ purpose }) => purpose === 'brake');
  return brakes && !branches.some(({ purpose }) => purpose === 'command') ? 'brake' : 'command';
}

/** A contactor that brakes goes on to run, or one that was commanded is left in to brake. */
function revisePurpose(state: StarterState, t: number, one: CoilCircuit, cause: string): Transition {
  if (!isContactor(one.coil)) return { state, events: [] };
  const control = state.control!;
  const contactor: ContactorName = one.coil === 'forwardContactor' ? 'forward' : 'reverse';
  const purpose = purposeOf(control, one);
  const before = state.plugging?.contactor === contactor ? 'brake' : 'command';
  if (purpose === before) return { state, events: [] };
  const other = opposite(contactor);
  const now = purpose === 'brake' ? 'to brake' : 'to run';
  const event: StarterEvent = {
    t,
    kind: 'purposeChanges',
    contactor,
    device: one.coil,
    purpose,
    rootTime: control.root.t,
    rootKind: control.root.kind,
    text: `${contactor} coil stays energised, now ${now}: ${cause}`,
  };
  const plugging = purpose === 'brake' ? { contactor, braking: other } : null;
  // Another connection is taken as soon as no current flows: a contactor still on its way finds it made.
  const windingWanted = purpose === 'brake' && state.data.plugConnection === 'star' ? 'star' : 'built';
  return { state: { ...state, plugging, opposing: other, windingWanted }, events: [event] };
}

/** Armature and poles start to move, unless the mechanical interlock holds them. */
export function beginToClose(state: StarterState, t: number, contactor: ContactorName): Transition {
  const device = armature(contactor);
  const still = cancel(state, (entry) => isMoveOf(entry, contactor));
  if (isBlocked(still, contactor)) {
    const text = `${contactor} contactor cannot close: the mechanical interlock holds it`;
    return { state: still, events: [{ t, kind: 'interlockBlocks', contactor, device, text }] };
  }
  const at = t + state.data.closingTime;
  const isIn = state.control?.positions[device] === true;
  let next = isIn ? still : schedule(still, { t: at, kind: 'deviceMoves', device, actuated: true });
  for (const pole of [0, 1, 2] as const)
    next = schedule(next, { t: at + state.data.closingScatter[pole], kind: 'touch', contactor, pole });
  return { state: next, events: [] };
}

function releaseContactor(
  state: StarterState,
  t: number,
  contactor: ContactorName,
  cause: string,
): Transition {
  const control = state.control!;
  const device = armature(contactor);
  // What is due at this very instant has arrived: no release holds it back.
  const arriving = state.agenda.filter((entry) => entry.t <= t && closes(entry, contactor));
  const done = releaseCoil(state, t, contactor, cause);
  let next = cancel(done.state, (entry) => entry.kind === 'deviceMoves' && entry.device === device);
  if (control.positions[device] === true || arriving.length > 0)
    next = schedule(next, {
      t: t + state.data.openingTime,
      kind: 'deviceMoves',
      device,
      actuated: false,
    });
  for (const entry of arriving) next = schedule(next, entry);
  const ends = state.plugging?.contactor === contactor;
  const bySwitch = ends && control.root.kind === 'switch';
  const events = done.events.map((event): StarterEvent => {
    if (event.kind !== 'coilReleased') return event;
    return {
      ...event,
      device,
      rootTime: control.root.t,
      rootKind: control.root.kind,
      ...(bySwitch ? { endsPlug: true } : {}),
    };
  });
  return { state: ends ? { ...next, plugging: null, opposing: null } : next, events };
}

function closes(entry: Scheduled, contactor: ContactorName): boolean {
  return (
    isMoveOf(entry, contactor) && (entry.kind === 'touch' || (entry.kind === 'deviceMoves' && entry.actuated))
  );
}

/** True while the other contactor's armature is in and something mechanical holds this one. */
export function isBlocked(state: StarterState, contactor: ContactorName): boolean {
  const { control, data } = state;
  if (control === null || !control.data.mechanicalInterlock) return false;
  if ((data.faults ?? []).some((fault) => fault.kind === 'mechanicalInterlockMissing')) return false;
  return control.positions[armature(opposite(contactor))] === true;
}

/** The device that a contactor's armature is. */
export function armature(contactor: ContactorName): CoilDevice & `${ContactorName}Contactor` {
  return contactor === 'forward' ? 'forwardContactor' : 'reverseContactor';
}

/** Replaces the control circuit's state. */
export function withControl(state: StarterState, control: ControlState): StarterState {
  return { ...state, control };
}

function isMoveOf(entry: Scheduled, contactor: ContactorName): boolean {
  if (entry.kind === 'part' || entry.kind === 'touch') return entry.contactor === contactor;
  return entry.kind === 'deviceMoves' && entry.device === armature(contactor);
}

/**
 * Outputs of a program whose feed is dead are cleared, and what it had read before is forgotten: it is told of the emergency stop
 * and of the trip, so that their reset finds nothing set.
 */
function clearOutputs(state: StarterState): StarterState {
  const control = state.control!;
  if (control.outputs === null || feedConducts(control)) return state;
  const unread = cancel(state, ({ kind }) => kind === 'scanReads' || kind === 'scanWrites');
  return withControl(unread, { ...control, outputs: {} });
}

/** A program works while its feed and its voltage are there. */
function feedConducts({ circuit, positions, stuck, voltage }: ControlState): boolean {
  return voltage !== 'low' && networkConducts(circuit.feed, positions, stuck);
}

/** A program looks at its inputs at the next whole multiple of its scan time, if it would then write something new. */
function planScan(state: StarterState, t: number, cause: string): StarterState {
  const control = state.control!;
  const { scanTime } = control.data;
  if (control.outputs === null || !feedConducts(control)) return state;
  if (state.agenda.some(({ kind }) => kind === 'scanReads' || kind === 'scanWrites')) return state;
  const asked = branchesAskedFor(control.circuit, control.positions, control.stuck);
  const { outputs } = control;
  if (control.circuit.coils.every(({ coil }) => String(asked[coil]) === String(outputs[coil] ?? [])))
    return state;
  // A change within a rounding of a scan's beginning is read by that scan.
  const scan = Math.ceil(t / scanTime - SCAN_ROUNDING) * scanTime;
  return schedule(state, { t: Math.max(t, scan), kind: 'scanReads', cause, root: control.root });
}

/** Share of a scan that counts as rounding. */
const SCAN_ROUNDING = 1e-9;
