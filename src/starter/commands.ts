import type { ActionKind } from '../scenario/scenario.ts';
import { releaseBypass, setRotorResistance } from './auxiliaries.ts';
import { type ContactorName, cancel, opposite, type StarterState, schedule } from './starter.ts';
import type { StarterEvent } from './starterEvent.ts';
import { isInjecting, orderInjection, releaseBrakeCoil, stopInjection } from './stopDevices.ts';
import type { Transition } from './transition.ts';

const WORDS: Readonly<Record<ActionKind, string>> = {
  startForward: 'command: start forward',
  startReverse: 'command: start reverse',
  plug: 'command: plug',
  coast: 'command: coast',
  brake: 'command: apply brake',
  injectDc: 'command: inject dc',
};

/** What an operator's command does to coils and agenda. */
export function act(state: StarterState, t: number, kind: ActionKind): Transition {
  const event: StarterEvent = { t, kind: 'action', text: WORDS[kind] };
  const done = carryOut(state, t, kind);
  return { state: done.state, events: [event, ...done.events] };
}

function carryOut(state: StarterState, t: number, kind: ActionKind): Transition {
  if (isInjecting(state) && kind !== 'brake' && kind !== 'coast') {
    const text = 'nothing is energised: direct current flows or is about to';
    return { state, events: [{ t, kind: 'injectionRefused', text }] };
  }
  switch (kind) {
    case 'startForward':
      return changeTo({ ...state, plugging: null }, t, 'forward', 'start forward');
    case 'startReverse':
      return changeTo({ ...state, plugging: null }, t, 'reverse', 'start reverse');
    case 'coast':
      return withoutInjection(dropBoth({ ...state, plugging: null }, t, 'coast'), t, 'coast');
    case 'brake': {
      const dropped = withoutInjection(
        dropBoth({ ...state, plugging: null }, t, 'apply brake'),
        t,
        'apply brake',
      );
      return { ...dropped, state: releaseBrakeCoil(dropped.state, t) };
    }
    case 'injectDc': {
      const dropped = dropBoth({ ...state, plugging: null }, t, 'inject dc');
      return { ...dropped, state: orderInjection(dropped.state, t) };
    }
    case 'plug':
      return plug(state, t);
  }
}

function withoutInjection(done: Transition, t: number, cause: string): Transition {
  const stopped = stopInjection(done.state, t, cause);
  return { state: stopped.state, events: [...done.events, ...stopped.events] };
}

/** Drops a coil: contacts that touch will part after the opening time, contacts on their way stay open. */
export function releaseCoil(
  state: StarterState,
  t: number,
  contactor: ContactorName,
  cause: string,
): Transition {
  const withoutMoves = cancel(
    state,
    (entry) => (entry.kind === 'touch' || entry.kind === 'energise') && entry.contactor === contactor,
  );
  if (!state.coil[contactor]) return { state: withoutMoves, events: [] };
  // The bypass contactor is interlocked with the contactors and drops out with them; rotor steps stop where they are.
  const auxiliaries = cancel(releaseBypass(withoutMoves, t), (entry) => entry.kind === 'rotorStep');
  let next: StarterState = {
    ...auxiliaries,
    coil: { ...state.coil, [contactor]: false },
    releasedAt: { ...state.releasedAt, [contactor]: t },
  };
  for (const pole of [0, 1, 2] as const)
    next = schedule(next, {
      t: t + state.data.openingTime + state.data.openingScatter[pole],
      kind: 'part',
      contactor,
      pole,
    });
  const text = `${contactor} coil released: ${cause}`;
  return { state: next, events: [{ t, kind: 'coilReleased', contactor, text }] };
}

/** Drops both coils. */
export function dropBoth(state: StarterState, t: number, cause: string): Transition {
  const first = releaseCoil(state, t, 'forward', cause);
  const second = releaseCoil(first.state, t, 'reverse', cause);
  return { state: second.state, events: [...first.events, ...second.events] };
}

/**
 * The other contactor drops out; this one is energised once the change-over delay since that has passed. What opposes
 * rotation finds the line resistors in the lines and the plugging resistance at the slip rings.
 */
function changeTo(
  state: StarterState,
  t: number,
  contactor: ContactorName,
  cause: 'plug' | 'start forward' | 'start reverse',
): Transition {
  const other = opposite(contactor);
  const dropped = releaseCoil(state, t, other, cause);
  const waiting = dropped.state.agenda.some(
    (entry) => entry.kind === 'energise' && entry.contactor === contactor,
  );
  if (dropped.state.coil[contactor] || waiting) return dropped;
  const turnsAgainst =
    state.data.zeroSpeedSwitch === null
      ? state.coil[other]
      : state.contact[other] && !state.contact[contactor];
  const opposing = cause === 'plug' || turnsAgainst ? other : null;
  const wanted = cause === 'plug' && state.data.plugConnection === 'star' ? 'star' : 'built';
  const prepared: StarterState = { ...dropped.state, opposing, windingWanted: wanted };
  const rotor =
    opposing === null
      ? { state: prepared, events: [] }
      : setRotorResistance(prepared, t, prepared.rotor?.plugging ?? 0);
  const at = Math.max(t, dropped.state.releasedAt[other] + state.data.changeoverDelay);
  return {
    state: schedule(rotor.state, { t: at, kind: 'energise', contactor }),
    events: [...dropped.events, ...rotor.events],
  };
}

/**
 * Stop against the direction of rotation. The direction is that of the energised contactor, or, with none energised,
 * that which the zero-speed switch shows.
 */
function plug(state: StarterState, t: number): Transition {
  const running = state.coil.forward || state.contact.forward ? 'forward' : 'reverse';
  const turns = state.coil.forward || state.coil.reverse || state.contact.forward || state.contact.reverse;
  const energised: ContactorName | null = state.coil.forward
    ? 'forward'
    : state.coil.reverse
      ? 'reverse'
      : null;
  if (!turns || state.plugging !== null) {
    const why = state.plugging !== null ? 'plugging already' : 'no contactor is in and no speed is shown';
    return { state, events: [{ t, kind: 'plugRefused', text: `nothing to plug: ${why}` }] };
  }
  const braking = energised ?? running;
  const contactor = opposite(braking);
  return changeTo({ ...state, plugging: { contactor, braking } }, t, contactor, 'plug');
}
