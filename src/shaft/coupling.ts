import type { CouplingData } from '../scenario/scenario.ts';
import type { Shaft } from './shaft.ts';
import { type ShaftMode, TWIST } from './shaftMode.ts';

/**
 * Torque that the coupling carries from the motor to the load, N·m: k·(twist − half the play) + c·(difference of speeds) while
 * flanks touch, 0 in the gap and without a coupling.
 *
 * @param y states, the shaft's from index `at`
 */
export function couplingTorque(
  shaft: Shaft,
  flank: ShaftMode['flank'],
  y: ArrayLike<number>,
  at: number,
): number {
  const { coupling } = shaft;
  if (coupling === null || flank === 0) return 0;
  const elastic = coupling.stiffness * (y[at + TWIST]! - flankPosition(coupling, flank));
  return elastic + coupling.damping * (y[at]! - y[at + 2]!);
}

/** Twist at which the flanks of a side come to touch, rad; 0 without play. */
export function flankPosition(coupling: CouplingData, flank: ShaftMode['flank']): number {
  return (flank * coupling.backlash) / 2;
}

/**
 * The flanks that touch at a twist. Exactly where they come to touch, the present answer stays.
 *
 * @param twist rad
 */
export function flankAt(coupling: CouplingData, twist: number, present: ShaftMode['flank']): -1 | 0 | 1 {
  if (coupling.backlash === 0) return 1;
  const edge = coupling.backlash / 2;
  if (Math.abs(twist) === edge) return twist * present < 0 ? 0 : present;
  if (twist > edge) return 1;
  return twist < -edge ? -1 : 0;
}

/**
 * Twist at which a coupling at rest carries a torque, rad; the middle of the gap for none.
 *
 * @param torque N·m
 */
export function twistFor(coupling: CouplingData, torque: number): number {
  return Math.sign(torque) * (coupling.backlash / 2) + torque / coupling.stiffness;
}
