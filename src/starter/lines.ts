import { dropBoth } from './commands.ts';
import { setVoltage } from './control/inputs.ts';
import { PHASES, type PoleState, type Poles, type StarterState } from './starter.ts';
import type { StarterEvent } from './starterEvent.ts';
import type { Transition } from './transition.ts';

/** All phases are lost at once; without a control circuit the coils drop out with them and stay out. */
export function loseSupply(state: StarterState, t: number): Transition {
  let current: Transition = {
    state,
    events: [{ t, kind: 'supplyLost', text: 'the supply is lost' }],
  };
  for (const phase of [0, 1, 2]) current = append(current, losePhase(current.state, t, phase));
  if (state.control !== null) return current;
  return append(current, dropBoth({ ...current.state, plugging: null }, t, 'the supply is lost'));
}

/** The supply is back on every phase. */
export function restoreSupply(state: StarterState, t: number): Transition {
  const lines: Poles = ['closed', 'closed', 'closed'];
  return {
    state: { ...state, lines },
    events: [{ t, kind: 'supplyReturns', text: 'the supply is back' }],
  };
}

function append(first: Transition, second: Transition): Transition {
  return { state: second.state, events: [...first.events, ...second.events] };
}

/** Where coils do not feel the voltage, all that counts is whether the phases they are fed from are there. */
export function withControlVoltage(done: Transition, t: number): Transition {
  const { control, lines } = done.state;
  if (control === null || control.data.coilVoltage !== null) return done;
  const fed = CONTROL_PHASES.every((phase) => lines[phase] === 'closed');
  const changed = setVoltage(done.state, t, fed ? 'high' : 'low', 'supply');
  return { state: changed.state, events: [...done.events, ...changed.events] };
}

/** The control circuit is fed from phases A and B. */
const CONTROL_PHASES = [0, 1] as const;

/** A supply phase is lost: its current ends at its next zero, at once where poles are ideal. */
export function losePhase(state: StarterState, t: number, phase: number): Transition {
  if (state.lines[phase] !== 'closed') return { state, events: [] };
  const name = PHASES[phase]!;
  const lost: StarterState = { ...state, lines: setLine(state, phase, 'arcing') };
  const event: StarterEvent = { t, kind: 'phaseLost', phase: name, text: `supply phase ${name} is lost` };
  if (state.data.poles !== 'ideal') return { state: lost, events: [event] };
  const cleared = clearLine(lost, t, phase, 'ideal pole');
  return { state: cleared.state, events: [event, ...cleared.events] };
}

/** The current of a lost supply phase has ended. */
export function clearLine(state: StarterState, t: number, phase: number, cause: string): Transition {
  const name = PHASES[phase]!;
  return {
    state: { ...state, lines: setLine(state, phase, 'open') },
    events: [{ t, kind: 'phaseClears', phase: name, text: `lost supply phase ${name} clears: ${cause}` }],
  };
}

function setLine({ lines }: StarterState, phase: number, value: PoleState): Poles {
  return [phase === 0 ? value : lines[0], phase === 1 ? value : lines[1], phase === 2 ? value : lines[2]];
}
