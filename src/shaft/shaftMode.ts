import type { FrictionDirection, Shaft } from './shaft.ts';

/** What is discrete about one mass. */
export interface MassMode {
  /** The direction whose friction acts; 0 while held. */
  readonly direction: FrictionDirection;
  /** At rest, and held there. */
  readonly held: boolean;
}

/** The discrete state of the shaft: plain data, fixed within a segment. */
export interface ShaftMode {
  /** The motor with everything rigidly joined to it; with a coupling the load as the second. */
  readonly masses: readonly MassMode[];
  /** Direction of power in the gear's mesh: +1 towards the load; +1 always where the gear has no loss. */
  readonly power: -1 | 1;
  /** Which flanks of the coupling touch: +1 those that drive forward, 0 none; without play always +1, rigid 0. */
  readonly flank: -1 | 0 | 1;
  /** For each piecewise load the index of the piece that holds. */
  readonly pieces: readonly number[];
}

/** Index of the mass on which the load acts: the only one, or the second. */
export function loadMass(shaft: Shaft): 0 | 1 {
  return shaft.coupling === null ? 0 : 1;
}

/** Offset of a mass's speed among the shaft's states. */
export function speedOffset(mass: number): 0 | 2 {
  return mass === 0 ? 0 : 2;
}

/** Offset of the twist among the states of two masses. */
export const TWIST = 3;

/** True when everything is at rest and held. */
export function isHeld(mode: ShaftMode): boolean {
  return mode.masses.every(({ held }) => held);
}

/** True when the torque on a turning mass depends on its direction, so that the mode must follow its sign of speed. */
export function dependsOnDirection(shaft: Shaft, mass: number): boolean {
  const own = mass === 0 && shaft.motor.friction > 0;
  if (mass !== loadMass(shaft)) return own;
  return own || shaft.gear !== null || shaft.friction > 0 || shaft.pieces.some(({ mirrored }) => mirrored);
}
