import { flankAt } from './coupling.ts';
import { type HoldLimits, holdLimits } from './holdLimits.ts';
import { meshTorque } from './meshTorque.ts';
import type { Shaft } from './shaft.ts';
import { driveOf } from './shaftEvents.ts';
import {
  dependsOnDirection,
  isHeld,
  loadMass,
  type MassMode,
  type ShaftMode,
  speedOffset,
  TWIST,
} from './shaftMode.ts';
import { pieceAt } from './speedPieces.ts';

/** What to tell of a change of mode. The motor's speed counts as the shaft's; held is the shaft when all of it is. */
export interface ShaftNote {
  readonly kind: 'zeroSpeed' | 'shaftHeld' | 'shaftBreaksAway';
  readonly text: string;
}

/**
 * The mode after an electrical change, which may make the torque jump (ideal poles): releases a held mass that is overpowered,
 * turns the direction of a mass that is about to leave zero speed the other way, and chooses the direction of power.
 *
 * @param state the shaft's states
 * @param airGapTorque after the change, N·m
 */
export function reviewShaft(
  shaft: Shaft,
  mode: ShaftMode,
  state: readonly number[],
  airGapTorque: number,
): { readonly mode: ShaftMode; readonly notes: readonly ShaftNote[] } {
  const reviewed = consistentMode(shaft, mode, state, airGapTorque);
  return { mode: reviewed, notes: holdNotes(shaft, mode, reviewed) };
}

/**
 * The mode that goes with a state, changed only where it contradicts the state: flanks by position, masses by their drive,
 * pieces by speed, direction of power by the mesh's torque. It holds no mass that is not held yet.
 */
export function consistentMode(
  shaft: Shaft,
  mode: ShaftMode,
  state: readonly number[],
  airGapTorque: number,
): ShaftMode {
  const flank = shaft.coupling === null ? 0 : flankAt(shaft.coupling, state[TWIST]!, mode.flank);
  const masses = mode.masses.map((mass, index): MassMode => {
    const atRest = state[speedOffset(index)] === 0 && dependsOnDirection(shaft, index);
    if (!mass.held && !atRest) return mass;
    const limits = holdLimits(shaft, index);
    const drive = driveOf(shaft, { flank }, index, limits)(state, 0, airGapTorque);
    const way = wayOut(limits, drive);
    return way === 0 ? mass : { direction: way, held: false };
  });
  const omega = state[speedOffset(loadMass(shaft))]!;
  const pieces = shaft.pieces.map((load, i) => pieceAt(load, omega, mode.pieces[i]!));
  const settled = { masses, flank, pieces, power: mode.power };
  return { ...settled, power: powerDirection(shaft, settled, state, airGapTorque) };
}

/** Direction in which a drive sets a mass at rest in motion; 0 when it stays. */
export function wayOut(limits: HoldLimits, drive: number): -1 | 0 | 1 {
  if (drive > limits.forward) return 1;
  return -drive > limits.backward ? -1 : 0;
}

/** A mass that has come to zero speed: held if its limits allow, else on its way in the direction of its drive. */
export function settledMass(limits: HoldLimits, drive: number): MassMode {
  const way = wayOut(limits, drive);
  if (way !== 0) return { direction: way, held: false };
  return limits.holdable ? { direction: 0, held: true } : { direction: directionOf(drive), held: false };
}

/** Friction opposes the motion that a net torque will cause; with none, forward is as good as reverse. */
export function directionOf(drive: number): -1 | 1 {
  return drive >= 0 ? 1 : -1;
}

function powerDirection(shaft: Shaft, mode: ShaftMode, state: readonly number[], torque: number): -1 | 1 {
  const { direction, held } = mode.masses[loadMass(shaft)]!;
  if (shaft.gear === null || held) return mode.power;
  const driving = direction * meshTorque(shaft, mode)(state, 0, torque);
  if (Math.abs(driving) <= shaft.negligibleTorque) return mode.power;
  return driving > 0 ? 1 : -1;
}

/** Notes of the whole shaft coming to be held, or being set free. */
export function holdNotes(shaft: Shaft, before: ShaftMode, after: ShaftMode): ShaftNote[] {
  if (isHeld(before) === isHeld(after)) return [];
  const { by } = holdLimits(shaft, loadMass(shaft));
  if (by === null) return [];
  return isHeld(after)
    ? [{ kind: 'shaftHeld', text: `${by} holds the shaft at rest` }]
    : [
        {
          kind: 'shaftBreaksAway',
          text:
            by === 'dry friction'
              ? 'torque overcomes the breakaway torque'
              : `torque overcomes what ${by} holds`,
        },
      ];
}
