import { holdLimits } from './holdLimits.ts';
import { wayOut } from './reviewShaft.ts';
import type { Shaft } from './shaft.ts';

/**
 * True when the load at rest stays there without air-gap torque: neither gravity nor an overhauling table sets it in motion. With
 * a coupling, motor and load hold together what neither would hold alone.
 */
export function holdsUnpowered(shaft: Shaft): boolean {
  const limits = holdLimits({ ...shaft, coupling: null }, 0);
  return wayOut(limits, -limits.center) === 0;
}

/**
 * The longest time in which dry friction brings a turning shaft to rest without air-gap torque, s: whatever else opposes motion,
 * and the loss of the gear, only shorten it. Infinity where dry friction does not hold the load.
 *
 * @param omega rad/s at the motor
 */
export function longestTimeToRest(shaft: Shaft, omega: number): number {
  const friction = shaft.friction + shaft.motor.friction;
  const breakaway = shaft.breakaway + shaft.motor.friction;
  let pull = Math.abs(shaft.gravity);
  for (const load of shaft.pieces)
    if (!load.mirrored) pull += Math.max(...load.breaks.map((speed) => tableMagnitude(load, speed)));
  return breakaway >= pull && friction > pull
    ? (shaft.inertia * Math.abs(omega)) / (friction - pull)
    : Number.POSITIVE_INFINITY;
}

function tableMagnitude(load: Shaft['pieces'][number], speed: number): number {
  const piece = load.pieces[load.breaks.indexOf(speed)]!;
  return Math.abs(piece.constant + piece.slope * speed);
}

/** True when the load slows a turning shaft without dry friction, ever more slowly: viscous, fan, windage, nothing that pulls. */
export function slowsDown(shaft: Shaft): boolean {
  const pulls = shaft.gravity !== 0 || shaft.pieces.some(({ mirrored }) => !mirrored);
  return !pulls && (shaft.viscous > 0 || shaft.fan > 0 || shaft.motor.windage > 0);
}
