import type { ElectricalModel } from '../machine/electricalModel.ts';
import { squared } from '../numeric/raised.ts';
import { canReset } from '../starter/overloadRelay.ts';
import type { StarterState } from '../starter/starter.ts';
import type { RunState } from './runState.ts';
import { readState, stateBuffer } from './segment.ts';
import type { SquaredCurrents } from './thermalMemory.ts';

/** The starter with its overload relay's leave to be reset. */
export function withResetAllowed({ starter, heat }: RunState): StarterState {
  if (starter.control === null || heat === null) return starter;
  return { ...starter, control: { ...starter.control, mayReset: canReset(Math.max(...heat)) } };
}

/** A relay that has tripped, or that never does, is not watched. */
export function mayTrip({ control, data }: StarterState): boolean {
  const fails = (data.faults ?? []).some((fault) => fault.kind === 'overloadNeverTrips');
  return !fails && control?.positions.overload !== true;
}

/** Squared line currents inside a step; null where none can flow. */
export function lineCurrents(model: ElectricalModel, kind: 'three' | 'two' | 'none'): SquaredCurrents | null {
  if (kind === 'none') return null;
  const y = stateBuffer();
  return (step, t, out) => {
    readState(step, t, 0, model.size, y);
    for (const phase of [0, 1, 2] as const) out[phase] = squared(model.terminalCurrent(t, y, phase));
  };
}
