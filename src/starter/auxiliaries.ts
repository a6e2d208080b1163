import { cancel, type StarterState, schedule } from './starter.ts';
import type { StarterEvent } from './starterEvent.ts';
import type { Transition } from './transition.ts';

/** The bypass contactor's coil is energised: the line resistors are bypassed after its closing time. */
export function energiseBypass(state: StarterState, t: number): StarterState {
  const { lineResistors } = state.data;
  if (lineResistors === undefined) return state;
  const next = cancel({ ...state, bypass: { ...state.bypass, coil: true } }, isBypassMove);
  return schedule(next, { t: t + lineResistors.closingTime, kind: 'bypassMoves', closed: true });
}

/** The bypass contactor's coil is released: the line resistors are in the lines after its opening time. */
export function releaseBypass(state: StarterState, t: number): StarterState {
  const { lineResistors } = state.data;
  if (lineResistors === undefined) return state;
  const next = cancel({ ...state, bypass: { ...state.bypass, coil: false } }, isBypassMove);
  return schedule(next, { t: t + lineResistors.openingTime, kind: 'bypassMoves', closed: false });
}

function isBypassMove(entry: { readonly kind: string }): boolean {
  return entry.kind === 'bypassMoves' || entry.kind === 'bypassEnergise';
}

/** The bypass contactor's poles touch or part, all three at once. */
export function moveBypass(state: StarterState, t: number, closed: boolean): Transition {
  if (state.bypass.closed === closed) return { state, events: [] };
  const event: StarterEvent = {
    t,
    kind: closed ? 'bypassCloses' : 'bypassOpens',
    text: closed ? 'line resistors are bypassed' : 'line resistors are in the lines',
  };
  return { state: { ...state, bypass: { ...state.bypass, closed } }, events: [event] };
}

/** The resistance at the slip rings changes, Ω. */
export function setRotorResistance(state: StarterState, t: number, resistance: number): Transition {
  if (state.rotor === null || state.rotorResistance === resistance) return { state, events: [] };
  const text =
    resistance === 0
      ? 'slip rings are short-circuited'
      : `slip-ring resistance ${resistance.toPrecision(3)} ohm`;
  return { state: { ...state, rotorResistance: resistance }, events: [{ t, kind: 'rotorStep', text }] };
}

/** The steps of a start at the slip rings: the first at once, each next one when the one before has had its time. */
export function startRotorSteps(state: StarterState, t: number): Transition {
  if (state.rotor === null) return { state, events: [] };
  const { starting } = state.rotor;
  const first = setRotorResistance(state, t, starting[0]?.resistance ?? 0);
  let next = cancel(first.state, (entry) => entry.kind === 'rotorStep');
  let at = t;
  for (const [index, step] of starting.entries()) {
    at += step.duration;
    next = schedule(next, { t: at, kind: 'rotorStep', resistance: starting[index + 1]?.resistance ?? 0 });
  }
  return { state: next, events: first.events };
}

/**
 * The windings take the connection wanted, star or as built, once no current can flow. The caller carries the fluxes
 * across.
 *
 * @param currentless no pole conducts
 */
export function reconnectWinding(state: StarterState, t: number, currentless: boolean): Transition {
  if (!currentless || state.winding === state.windingWanted) return { state, events: [] };
  const winding = state.windingWanted;
  const text = winding === 'star' ? 'windings are connected in star' : 'windings are connected in delta';
  return { state: { ...state, winding }, events: [{ t, kind: 'windingReconnected', text }] };
}
