import { conduction } from './conduction.ts';
import { cancel, opposite, type StarterState, schedule } from './starter.ts';
import type { StarterEvent } from './starterEvent.ts';
import type { Transition } from './transition.ts';

/** The brake's coil is released: its torque acts after its delay. */
export function releaseBrakeCoil(state: StarterState, t: number): StarterState {
  const { brake } = state.data;
  if (brake === undefined) return state;
  const waits = state.agenda.some(({ kind }) => kind === 'brakeSets');
  return state.braked || waits ? state : schedule(state, { t: t + brake.delay, kind: 'brakeSets' });
}

/** The brake's torque begins to act. */
export function setBrake(state: StarterState, t: number): Transition {
  return {
    state: { ...state, braked: true },
    events: [{ t, kind: 'brakeSets', text: 'the mechanical brake sets' }],
  };
}

/**
 * What the brake makes of a change of the coils: it lets go when a contactor is energised, and sets after plugging where it
 * is meant to.
 */
export function followBrake(before: StarterState, after: StarterState, t: number): Transition {
  const { brake } = after.data;
  if (brake === undefined) return { state: after, events: [] };
  const isEnergised = ({ coil }: StarterState) => coil.forward || coil.reverse;
  if (isEnergised(after)) {
    const waiting = cancel(after, ({ kind }) => kind === 'brakeSets');
    if (!after.braked) return { state: waiting, events: [] };
    const event: StarterEvent = { t, kind: 'brakeReleases', text: 'the mechanical brake lets go' };
    return { state: { ...waiting, braked: false }, events: [event] };
  }
  const plugged = before.opposing !== null && before.coil[opposite(before.opposing)];
  if (brake.sets === 'afterPlugging' && plugged) return { state: releaseBrakeCoil(after, t), events: [] };
  return { state: after, events: [] };
}

/** The contactor of the direct current is asked for, after the time in which the flux decays. */
export function orderInjection(state: StarterState, t: number): StarterState {
  const { injection } = state.data;
  if (injection === undefined) return state;
  return schedule(state, { t: t + injection.delay + injection.closingTime, kind: 'injectionCloses' });
}

/** True while direct current flows or is about to. */
export function isInjecting(state: StarterState): boolean {
  return state.injection !== 'off' || state.agenda.some(({ kind }) => kind === 'injectionCloses');
}

/**
 * The contacts of the direct current touch. They are interlocked: with a pole of a contactor closed or arcing, or once the
 * switch that shall end it has opened, they do not.
 */
export function closeInjection(state: StarterState, t: number): Transition {
  const { injection } = state.data;
  const stays = (why: string): Transition => ({
    state,
    events: [{ t, kind: 'injectionRefused', text: `direct current stays off: ${why}` }],
  });
  if (injection === undefined) return { state, events: [] };
  const live = [...state.poles.forward, ...state.poles.reverse].some((pole) => pole !== 'open');
  if (live || conduction(state).kind !== 'none') return stays('a contactor still conducts');
  if (injection.duration === null && !(state.contact.forward || state.contact.reverse))
    return stays('the zero-speed switch is open');
  const on: StarterState = { ...state, injection: 'fed' };
  return {
    state:
      injection.duration === null
        ? on
        : schedule(on, { t: t + injection.duration, kind: 'injectionEnds', cause: 'its time is over' }),
    events: [{ t, kind: 'injectionBegins', text: 'direct current into terminals B and C' }],
  };
}

/** Direct current that has been asked for does not come, and one that flows is switched off. */
export function stopInjection(state: StarterState, t: number, cause: string): Transition {
  return endInjection(
    cancel(state, ({ kind }) => kind === 'injectionCloses'),
    t,
    cause,
  );
}

/** The zero-speed switch has opened: it ends a direct current that lasts until then. */
export function followSwitch(state: StarterState, t: number): Transition {
  const waits = state.data.injection?.duration === null && !state.contact.forward && !state.contact.reverse;
  return waits ? endInjection(state, t, 'the zero-speed switch has opened') : { state, events: [] };
}

/** The rectifier loses its supply; its diodes pass on what the winding drives until that current is gone. */
export function endInjection(state: StarterState, t: number, cause: string): Transition {
  if (state.injection !== 'fed') return { state, events: [] };
  const off = cancel({ ...state, injection: 'freewheeling' }, ({ kind }) => kind === 'injectionEnds');
  return {
    state: off,
    events: [{ t, kind: 'injectionEnds', text: `direct current is switched off: ${cause}` }],
  };
}

/** The diodes block: the direct current's contactor opens without current. */
export function blockBridge(state: StarterState, t: number): Transition {
  return {
    state: { ...state, injection: 'off' },
    events: [{ t, kind: 'injectionIsGone', text: 'the direct current is gone' }],
  };
}
