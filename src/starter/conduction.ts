import type { Connection } from '../machine/supplyVector.ts';
import type { StarterData } from '../scenario/scenario.ts';
import type { ContactorName, StarterState } from './starter.ts';

/** What the poles connect: a conducting set, or a short circuit between two supply phases. */
export type Conduction =
  | { readonly kind: 'three' | 'two' | 'none'; readonly connection: Connection }
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
 * The conducting set. A terminal is connected while a pole of either contactor on it is closed or arcing. Two poles
 * on one terminal fed from different supply phases are a line-to-line short circuit through both contactors; the
 * common phase of a reversing pair is fed from the same phase by both and is no fault. One connected terminal alone
 * makes no circuit.
 */
export function conduction(state: StarterState): Conduction {
  const forward = supplyPhases(state.data, 'forward');
  const reverse = supplyPhases(state.data, 'reverse');
  const connection: [number, number, number] = [-1, -1, -1];
  for (const terminal of [0, 1, 2] as const) {
    const byForward = state.poles.forward[terminal] !== 'open';
    const byReverse = state.poles.reverse[terminal] !== 'open';
    if (byForward && byReverse && forward[terminal] !== reverse[terminal])
      return { kind: 'shortCircuit', terminal };
    if (byForward) connection[terminal] = forward[terminal];
    else if (byReverse) connection[terminal] = reverse[terminal];
  }
  const connected = connection.filter((phase) => phase >= 0).length;
  return { kind: connected === 3 ? 'three' : connected === 2 ? 'two' : 'none', connection };
}

/** Poles that arc, may clear now, and carry a current that can pass through zero. */
export function clearablePoles(state: StarterState): readonly { contactor: ContactorName; pole: number }[] {
  const list: { contactor: ContactorName; pole: number }[] = [];
  for (const contactor of ['forward', 'reverse'] as const)
    for (const pole of [0, 1, 2])
      if (state.poles[contactor][pole] === 'arcing' && state.mayClear[contactor][pole])
        list.push({ contactor, pole });
  return list;
}
