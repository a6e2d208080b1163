import { isCommand } from '../scenario/scenario.ts';
import { energiseBypass, moveBypass, setRotorResistance, startRotorSteps } from './auxiliaries.ts';
import { act, releaseCoil } from './commands.ts';
import type { Root } from './control/controlState.ts';
import { moveCoilDevice, operate, readScan, showSpeed, writeScan } from './control/inputs.ts';
import { settleControl } from './control/settle.ts';
import { losePhase, loseSupply, restoreSupply, withControlVoltage } from './lines.ts';
import {
  type ContactorName,
  cancel,
  type Direction,
  hasFault,
  PHASES,
  type PoleState,
  type Poles,
  type Scheduled,
  type StarterState,
  schedule,
  switchIsBlind,
  switchSticks,
} from './starter.ts';
import type { StarterEvent } from './starterEvent.ts';
import { closeInjection, endInjection, followSwitch, setBrake } from './stopDevices.ts';
import type { Transition } from './transition.ts';

/** Carries out the first entry of the agenda, and what the control circuit makes of it. */
export function applyScheduled(state: StarterState): Transition {
  const [entry, ...agenda] = state.agenda;
  if (entry === undefined) return { state, events: [] };
  const otherwise = entry.kind === 'scanWrites' ? entry.cause : '';
  return followUp(carryOut({ ...state, agenda }, entry), entry.t, otherwise, state.control?.root);
}

/**
 * The control circuit settles after a change; the cause is what the first event says.
 *
 * @param before what had set things off until now; a switch whose contact moves nothing does not take its place
 */
export function followUp(done: Transition, t: number, otherwise: string, before?: Root): Transition {
  if (done.state.control === null) return done;
  const seen = withControlVoltage(done, t);
  const settled = settleControl(seen.state, t, seen.events[0]?.text ?? otherwise);
  const state = keepRoot(seen.state, settled.state, before);
  return { state, events: [...seen.events, ...settled.events] };
}

function keepRoot(unsettled: StarterState, settled: StarterState, before: Root | undefined): StarterState {
  const control = settled.control!;
  const moved = control.coils !== unsettled.control?.coils;
  if (before === undefined || moved || control.root.kind !== 'switch') return settled;
  return { ...settled, control: { ...control, root: before } };
}

function carryOut(rest: StarterState, entry: Scheduled): Transition {
  switch (entry.kind) {
    case 'action':
      return isCommand(entry.action) ? act(rest, entry.t, entry.action.do) : operate(rest, entry.action);
    case 'energise':
      return energise(rest, entry.t, entry.contactor);
    case 'touch':
      return touch(rest, entry);
    case 'part':
      return part(rest, entry);
    case 'mayClear':
      return { state: setMayClear(rest, entry.contactor, entry.pole, true), events: [] };
    case 'contact':
      return moveContact(rest, entry.t, entry.direction, entry.closed);
    case 'bypassEnergise':
      return { state: energiseBypass(rest, entry.t), events: [] };
    case 'bypassMoves':
      return moveBypass(rest, entry.t, entry.closed);
    case 'rotorStep':
      return setRotorResistance(rest, entry.t, entry.resistance);
    case 'brakeSets':
      return setBrake(rest, entry.t);
    case 'injectionCloses':
      return closeInjection(rest, entry.t);
    case 'injectionEnds':
      return endInjection(rest, entry.t, entry.cause);
    case 'phaseLost':
      return losePhase(rest, entry.t, entry.phase);
    case 'supplyChanges':
      return entry.present ? restoreSupply(rest, entry.t) : loseSupply(rest, entry.t);
    case 'deviceMoves':
      return moveCoilDevice(rest, entry.t, entry.device, entry.actuated);
    case 'scanReads':
      return { state: readScan(rest, entry.t, entry.cause, entry.root), events: [] };
    case 'scanWrites':
      return { state: writeScan(rest, entry.outputs, entry.root), events: [] };
  }
}

/** A pole's arc is extinguished: at a current zero, or because its circuit has been opened elsewhere. */
export function clearPole(
  state: StarterState,
  t: number,
  contactor: ContactorName,
  pole: number,
  cause: string,
): Transition {
  const cleared = cancel(
    setMayClear(setPole(state, contactor, pole, 'open'), contactor, pole, false),
    (entry) => entry.kind === 'mayClear' && entry.contactor === contactor && entry.pole === pole,
  );
  const phase = PHASES[pole]!;
  return {
    state: cleared,
    events: [
      { t, kind: 'poleClears', contactor, phase, text: `${contactor} pole ${phase} clears: ${cause}` },
    ],
  };
}

/** The speed has crossed a threshold of the zero-speed switch; the contact follows after its delay. */
export function crossThreshold(
  state: StarterState,
  t: number,
  direction: Direction,
  up: boolean,
): StarterState {
  const delay = state.data.zeroSpeedSwitch?.delay ?? 0;
  const undone = cancel(state, (entry) => entry.kind === 'contact' && entry.direction === direction);
  const marked = { ...undone, pickedUp: { ...undone.pickedUp, [direction]: up } };
  if (marked.contact[direction] === up) return marked;
  return schedule(marked, { t: t + delay, kind: 'contact', direction, closed: up });
}

function energise(state: StarterState, t: number, contactor: ContactorName): Transition {
  if (state.plugging?.contactor === contactor && state.data.zeroSpeedSwitch !== null) {
    if (!state.contact[state.plugging.braking]) {
      const text = `${contactor} coil stays dead: the zero-speed switch is open`;
      return {
        state: { ...state, plugging: null, opposing: null },
        events: [{ t, kind: 'plugRefused', contactor, text }],
      };
    }
  }
  let next: StarterState = cancel(
    { ...state, coil: { ...state.coil, [contactor]: true } },
    (entry) => entry.kind === 'part' && entry.contactor === contactor,
  );
  for (const pole of [0, 1, 2] as const)
    next = schedule(next, {
      t: t + state.data.closingTime + state.data.closingScatter[pole],
      kind: 'touch',
      contactor,
      pole,
    });
  const event: StarterEvent = {
    t,
    kind: 'coilEnergised',
    contactor,
    text: `${contactor} coil energised`,
  };
  if (state.opposing === null) {
    const steps = startRotorSteps(energiseBypass(next, t), t);
    return { state: steps.state, events: [event, ...steps.events] };
  }
  const after = state.data.lineResistors?.bypassAfter ?? null;
  if (after !== null) next = schedule(next, { t: t + after, kind: 'bypassEnergise' });
  return { state: next, events: [event] };
}

function touch(state: StarterState, entry: Scheduled & { kind: 'touch' }): Transition {
  const { contactor, pole, t } = entry;
  if (hasFault(state.data, 'deadPole', contactor, pole)) return { state, events: [] };
  if (state.poles[contactor][pole] === 'closed') return { state, events: [] };
  const phase = PHASES[pole]!;
  return {
    state: setMayClear(setPole(state, contactor, pole, 'closed'), contactor, pole, false),
    events: [{ t, kind: 'poleTouches', contactor, phase, text: `${contactor} pole ${phase} touches` }],
  };
}

function part(state: StarterState, entry: Scheduled & { kind: 'part' }): Transition {
  const { contactor, pole, t } = entry;
  if (state.poles[contactor][pole] !== 'closed') return { state, events: [] };
  if (hasFault(state.data, 'weldedPole', contactor, pole)) return { state, events: [] };
  const phase = PHASES[pole]!;
  const parted: Transition = {
    state: setPole(state, contactor, pole, 'arcing'),
    events: [{ t, kind: 'poleParts', contactor, phase, text: `${contactor} pole ${phase} parts` }],
  };
  if (state.data.poles === 'ideal') {
    const cleared = clearPole(parted.state, t, contactor, pole, 'ideal pole');
    return { state: cleared.state, events: [...parted.events, ...cleared.events] };
  }
  const wait = state.data.minimumArcingTime;
  return {
    ...parted,
    state:
      wait > 0
        ? schedule(parted.state, { t: t + wait, kind: 'mayClear', contactor, pole })
        : setMayClear(parted.state, contactor, pole, true),
  };
}

function moveContact(state: StarterState, t: number, direction: Direction, closed: boolean): Transition {
  if (closed ? switchIsBlind(state.data) || isLockedOut(state) : switchSticks(state.data))
    return { state, events: [] };
  if (state.contact[direction] === closed) return { state, events: [] };
  const shown = showSpeed(state, t, direction, closed);
  const moved = { ...shown, contact: { ...state.contact, [direction]: closed } };
  const event: StarterEvent = {
    t,
    kind: closed ? 'switchCloses' : 'switchOpens',
    text: `zero-speed switch ${closed ? 'closes' : 'opens'} (${direction})`,
  };
  const plugging = state.plugging;
  if (moved.injection === 'fed') {
    const followed = followSwitch(moved, t);
    return { state: followed.state, events: [event, ...followed.events] };
  }
  if (state.control !== null && plugging !== null) return { state: moved, events: [event] };
  if (!closed && plugging === null && state.opposing === direction) {
    // A start against the rotation has brought the machine to rest: from here it is a start like any other.
    const steps = startRotorSteps({ ...moved, opposing: null }, t);
    return { state: steps.state, events: [event, ...steps.events] };
  }
  if (closed || plugging === null || plugging.braking !== direction) return { state: moved, events: [event] };
  const early: StarterEvent = {
    t,
    kind: 'plugRefused',
    contactor: plugging.contactor,
    text: `the zero-speed switch has opened before the ${plugging.contactor} coil's turn`,
  };
  const released = releaseCoil(
    { ...moved, plugging: null, opposing: null },
    t,
    plugging.contactor,
    'zero-speed switch has opened',
  );
  const inTime = state.coil[plugging.contactor];
  return { state: released.state, events: [event, ...(inTime ? [] : [early]), ...released.events] };
}

/** The lockout solenoid keeps the switch's contacts from being actuated. */
function isLockedOut(state: StarterState): boolean {
  return (
    state.data.zeroSpeedSwitch?.lockout === true &&
    state.control !== null &&
    state.control.positions.lockout !== true
  );
}

function setPole(
  state: StarterState,
  contactor: ContactorName,
  pole: number,
  value: PoleState,
): StarterState {
  const poles = replaceAt(state.poles[contactor], pole, value) satisfies Poles;
  return { ...state, poles: { ...state.poles, [contactor]: poles } };
}

function setMayClear(
  state: StarterState,
  contactor: ContactorName,
  pole: number,
  value: boolean,
): StarterState {
  const mayClear = replaceAt(state.mayClear[contactor], pole, value);
  return { ...state, mayClear: { ...state.mayClear, [contactor]: mayClear } };
}

function replaceAt<T>(triple: readonly [T, T, T], at: number, value: T): readonly [T, T, T] {
  return [at === 0 ? value : triple[0], at === 1 ? value : triple[1], at === 2 ? value : triple[2]];
}
