import type { ActionKind } from '../scenario/scenario.ts';
import { type ContactorName, cancel, opposite, type StarterState, schedule } from './starter.ts';
import type { StarterEvent } from './starterEvent.ts';
import type { Transition } from './transition.ts';

const WORDS: Readonly<Record<ActionKind, string>> = {
  startForward: 'command: start forward',
  startReverse: 'command: start reverse',
  plug: 'command: plug',
  coast: 'command: coast',
};

/** What an operator's command does to coils and agenda. */
export function act(state: StarterState, t: number, kind: ActionKind): Transition {
  const event: StarterEvent = { t, kind: 'action', text: WORDS[kind] };
  const done = carryOut(state, t, kind);
  return { state: done.state, events: [event, ...done.events] };
}

function carryOut(state: StarterState, t: number, kind: ActionKind): Transition {
  switch (kind) {
    case 'startForward':
      return changeTo({ ...state, plugging: null }, t, 'forward', 'start forward');
    case 'startReverse':
      return changeTo({ ...state, plugging: null }, t, 'reverse', 'start reverse');
    case 'coast':
      return dropBoth({ ...state, plugging: null }, t, 'coast');
    case 'plug':
      return plug(state, t);
  }
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
  let next: StarterState = {
    ...withoutMoves,
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

function dropBoth(state: StarterState, t: number, cause: string): Transition {
  const first = releaseCoil(state, t, 'forward', cause);
  const second = releaseCoil(first.state, t, 'reverse', cause);
  return { state: second.state, events: [...first.events, ...second.events] };
}

/** The other contactor drops out; this one is energised once the change-over delay since that has passed. */
function changeTo(state: StarterState, t: number, contactor: ContactorName, cause: string): Transition {
  const other = opposite(contactor);
  const dropped = releaseCoil(state, t, other, cause);
  const waiting = dropped.state.agenda.some(
    (entry) => entry.kind === 'energise' && entry.contactor === contactor,
  );
  if (dropped.state.coil[contactor] || waiting) return dropped;
  const at = Math.max(t, dropped.state.releasedAt[other] + state.data.changeoverDelay);
  return { ...dropped, state: schedule(dropped.state, { t: at, kind: 'energise', contactor }) };
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
