import type { FrictionDirection, Shaft } from './shaft.ts';
import { loadMass, type ShaftMode } from './shaftMode.ts';
import { pieceAt } from './speedPieces.ts';

/**
 * Load torque in one mode, N·m, positive against forward rotation, referred to the motor without gear loss:
 * smooth part constant + ω·(viscous + fan·|ω|) + power/ω, and dry friction.
 */
export interface LoadCoefficients {
  /** N·m */
  readonly constant: number;
  /** N·m·s/rad */
  readonly viscous: number;
  /** N·m·s²/rad² */
  readonly fan: number;
  /** W */
  readonly power: number;
  /** Dry friction with its sign, N·m. */
  readonly dry: number;
}

/** The load torque of a mode as coefficients; nothing of it depends on the present speed. */
export function loadCoefficients(shaft: Shaft, mode: Pick<ShaftMode, 'masses' | 'pieces'>): LoadCoefficients {
  return coefficients(shaft, mode.masses[loadMass(shaft)]!.direction, mode.pieces);
}

function coefficients(shaft: Shaft, direction: FrictionDirection, chosen: readonly number[]) {
  const sum = { constant: shaft.gravity, viscous: shaft.viscous, fan: shaft.fan, power: 0 };
  shaft.pieces.forEach((load, i) => {
    const piece = load.pieces[chosen[i]!]!;
    sum.constant += load.mirrored ? direction * piece.constant : piece.constant;
    // Mirrored, slope · |ω| and power / |ω| turn their sign with ω by themselves.
    sum.viscous += piece.slope;
    sum.power += piece.power;
  });
  return { ...sum, dry: shaft.friction * direction };
}

/** Load torque without dry friction, N·m. */
export function smoothTorque(load: LoadCoefficients, omega: number): number {
  const torque = load.constant + omega * (load.viscous + load.fan * Math.abs(omega));
  return load.power === 0 ? torque : torque + load.power / omega;
}

/**
 * Whole load torque at a constant speed, N·m, positive against forward rotation, referred to the motor without gear loss.
 *
 * @param omega rad/s at the motor
 * @param direction the direction whose friction acts (that of ω, where it is not zero)
 */
export function loadTorqueAt(shaft: Shaft, omega: number, direction: FrictionDirection): number {
  const pieces = shaft.pieces.map((load) => pieceAt(load, omega, -1));
  const load = coefficients(shaft, direction, pieces);
  return smoothTorque(load, omega) + load.dry;
}

/** Loss torque of the motor's own windage, N·m. */
export function windageTorque(shaft: Shaft, omega: number): number {
  return shaft.motor.windage * omega * Math.abs(omega);
}
