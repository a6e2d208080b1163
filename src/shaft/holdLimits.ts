import { motorSideFactor } from './gear.ts';
import type { Shaft } from './shaft.ts';
import { loadMass } from './shaftMode.ts';
import { torqueAtRest } from './speedPieces.ts';

/**
 * What it takes to set a mass in motion from rest. The torque that drives it in (air-gap torque of the motor, coupling torque
 * of the load) less `center` is its drive: above `forward` it moves forward, below −`backward` backward.
 */
export interface HoldLimits {
  /** Pull of the load that does not depend on direction, N·m. */
  readonly center: number;
  /** N·m */
  readonly forward: number;
  /** N·m */
  readonly backward: number;
  /** Whether a drive within the limits holds the mass at rest. */
  readonly holdable: boolean;
  /** What holds, in words; null: nothing worth naming. */
  readonly by: string | null;
}

/**
 * Limits of standstill. With a gear they follow from the acceleration in either direction with the gear loss of that direction
 * (physics: motor side T_g/(i·η) driving, T_g·η_back/i driven): a gear with loss holds like friction, by an amount that grows
 * with the load it carries.
 */
export function holdLimits(shaft: Shaft, mass: number): HoldLimits {
  const own = mass === 0 ? shaft.motor.friction : 0;
  if (mass !== loadMass(shaft))
    return { center: 0, forward: own, backward: own, holdable: own > 0, by: own > 0 ? nameOf(shaft) : null };
  let center = shaft.gravity;
  let grip = shaft.breakaway;
  for (const load of shaft.pieces)
    if (load.mirrored) grip += torqueAtRest(load);
    else center += torqueAtRest(load);
  const friction = grip + own;
  const by = friction > 0 ? nameOf(shaft) : null;
  // With nothing that holds, a rest this small keeps the direction of motion known where a torque depends on it.
  const least =
    shaft.gear !== null || shaft.pieces.some(({ mirrored }) => mirrored) ? shaft.negligibleTorque : 0;
  if (shaft.gear === null) {
    const limit = Math.max(friction, least);
    return { center, forward: limit, backward: limit, holdable: limit > 0, by };
  }
  const up = center + grip;
  const down = center - grip;
  const forward = motorSideFactor(shaft, up > 0 ? 1 : -1) * up + own - center;
  const backward = center + own - motorSideFactor(shaft, down < 0 ? 1 : -1) * down;
  return {
    center,
    forward: Math.max(forward, least),
    backward: Math.max(backward, least),
    holdable: true,
    by: by ?? (center === 0 ? null : GEAR),
  };
}

function nameOf(shaft: Shaft): string {
  return shaft.isBraked === true ? BRAKE : FRICTION;
}

const FRICTION = 'dry friction';
const BRAKE = 'the brake';
const GEAR = 'the loss of the gear';
