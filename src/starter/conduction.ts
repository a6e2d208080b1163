import { DIRECT_LEADS } from '../machine/directSource.ts';
import type { Connection } from '../machine/supplyVector.ts';
import type { StarterData } from '../scenario/scenario.ts';
import type { ContactorName, StarterState } from './starter.ts';

/** What the poles connect: a conducting set, or a short circuit between two supply phases. */
export type Conduction =
  | {
      readonly kind: 'three' | 'two' | 'none';
      readonly connection: Connection;
      /** The two terminals are on a rectifier: fed by it, or through its diodes. */
      readonly direct?: 'fed' | 'freewheeling';
    }
  | { readonly kind: 'shortCircuit'; readonly terminal: number };

/** Supply phase behind each terminal's pole of a contactor. */
export function supplyPhases(data: StarterData, contactor: ContactorName): readonly [number, number, number] {
  if (contactor === 'forward') return [0, 1, 2];
  switch (data.exchangedPhases) {
    case 'AB':
      return [1, 0, 2];
    case 'BC':
      return [0, 2, 1];
    case 'CA':
      return [2, 1, 0];
  }
}

/**
 * The conducting set. A terminal is connected while a pole of either contactor on it is closed or arcing and the supply
 * phase behind that pole is there. Two such poles on one terminal fed from different supply phases are a line-to-line
 * short circuit through both contactors; the common phase of a reversing pair is fed from the same phase by both and is no
 * fault. One connected terminal alone makes no circuit.
 */
export function conduction(state: StarterState): Conduction {
  // Its contactor is interlocked with the others: no pole of theirs conducts.
  if (state.injection !== 'off') return { kind: 'two', connection: DIRECT_LEADS, direct: state.injection };
  const forward = supplyPhases(state.data, 'forward');
  const reverse = supplyPhases(state.data, 'reverse');
  const connection: [number, number, number] = [-1, -1, -1];
  for (const terminal of [0, 1, 2] as const) {
    const byForward = state.poles.forward[terminal] !== 'open' && isLive(state, forward[terminal]);
    const byReverse = state.poles.reverse[terminal] !== 'open' && isLive(state, reverse[terminal]);
    if (byForward && byReverse && forward[terminal] !== reverse[terminal])
      return { kind: 'shortCircuit', terminal };
    if (byForward) connection[terminal] = forward[terminal];
    else if (byReverse) connection[terminal] = reverse[terminal];
  }
  const connected = connection.filter((phase) => phase >= 0).length;
  return { kind: connected === 3 ? 'three' : connected === 2 ? 'two' : 'none', connection };
}

function isLive(state: StarterState, phase: number): boolean {
  return state.lines[phase] !== 'open';
}

/** An arc that a current zero may put out: of a contactor's pole, or of a lost supply phase at the terminal it feeds. */
export type Clearable =
  | { readonly kind: 'pole'; readonly contactor: ContactorName; readonly pole: number }
  | { readonly kind: 'line'; readonly phase: number; readonly terminal: number }
  /** Diodes that pass on a current of the winding block when it is gone. */
  | { readonly kind: 'diodes'; readonly terminal: number };

/** Arcs that may clear now, and carry a current that can pass through zero. */
export function clearableArcs(state: StarterState): readonly Clearable[] {
  const list: Clearable[] = [];
  if (state.injection === 'freewheeling') return [{ kind: 'diodes', terminal: 1 }];
  for (const contactor of ['forward', 'reverse'] as const)
    for (const pole of [0, 1, 2])
      if (state.poles[contactor][pole] === 'arcing' && state.mayClear[contactor][pole])
        list.push({ kind: 'pole', contactor, pole });
  if (!state.lines.includes('arcing')) return list;
  const { connection } = connectionOf(state);
  for (const phase of [0, 1, 2]) {
    const terminal = connection.indexOf(phase);
    if (state.lines[phase] === 'arcing' && terminal >= 0) list.push({ kind: 'line', phase, terminal });
  }
  return list;
}

function connectionOf(state: StarterState): { readonly connection: Connection } {
  const poles = conduction(state);
  return poles.kind === 'shortCircuit' ? { connection: [-1, -1, -1] } : poles;
}

/** True when no contactor is energised or about to be, and no current can flow. */
export function isIdle(state: StarterState): boolean {
  if (state.coil.forward || state.coil.reverse) return false;
  return state.agenda.every((entry) => entry.kind === 'contact') && conduction(state).kind === 'none';
}
