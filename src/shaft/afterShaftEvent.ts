import { flankAt, flankPosition } from './coupling.ts';
import { holdLimits } from './holdLimits.ts';
import { consistentMode, holdNotes, type ShaftNote, settledMass } from './reviewShaft.ts';
import type { Shaft } from './shaft.ts';
import { driveOf, type ShaftEventFunction } from './shaftEvents.ts';
import { dependsOnDirection, type MassMode, type ShaftMode, speedOffset, TWIST } from './shaftMode.ts';

/**
 * Mode and state after an event of the shaft. Nothing jumps: a speed that has come to zero is made exactly zero, a twist at
 * which flanks touch exactly that twist, so that the next segment begins on the event and not beside it.
 *
 * @param event one of `shaftEventFunctions(shaft, mode)`
 * @param state the shaft's states at the event
 * @param airGapTorque at the event, N·m
 */
export function afterShaftEvent(
  shaft: Shaft,
  mode: ShaftMode,
  event: Pick<ShaftEventFunction, 'kind' | 'mass'>,
  state: readonly number[],
  airGapTorque: number,
): { readonly mode: ShaftMode; readonly state: number[]; readonly notes: readonly ShaftNote[] } {
  const next = [...state];
  // Two masses may reach zero within the width to which events are located: the second would never be seen again.
  const stopped = mode.masses.map(
    ({ direction, held }, mass) =>
      (event.kind === 'zeroSpeed' && event.mass === mass) ||
      (!held && dependsOnDirection(shaft, mass) && direction * state[speedOffset(mass)]! < 0),
  );
  stopped.forEach((stops, mass) => {
    if (stops) next[speedOffset(mass)] = 0;
  });
  // From the position at the event, which lies beyond the edge; on the edge itself it would be on neither side.
  const { coupling } = shaft;
  const flank = coupling === null ? 0 : flankAt(coupling, state[TWIST]!, mode.flank);
  if (event.kind === 'flank' && coupling !== null)
    next[TWIST] = flankPosition(coupling, flank === 0 ? mode.flank : flank);
  const masses = mode.masses.map((mass, index): MassMode => {
    if (!stopped[index] && !(event.kind === 'breakaway' && event.mass === index)) return mass;
    const limits = holdLimits(shaft, index);
    const drive = driveOf(shaft, { flank }, index, limits)(next, 0, airGapTorque);
    if (stopped[index]) return settledMass(limits, drive);
    return { direction: drive - limits.forward >= -drive - limits.backward ? 1 : -1, held: false };
  });
  const power = event.kind === 'powerTurns' ? turned(mode.power) : mode.power;
  const after = consistentMode(shaft, { ...mode, masses, flank, power }, next, airGapTorque);
  const zero: ShaftNote[] = stopped[0] ? [{ kind: 'zeroSpeed', text: 'speed passes through zero' }] : [];
  return { mode: after, state: next, notes: [...zero, ...holdNotes(shaft, mode, after)] };
}

function turned(power: -1 | 1): -1 | 1 {
  return power === 1 ? -1 : 1;
}
