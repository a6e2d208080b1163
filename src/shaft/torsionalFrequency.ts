import type { Shaft } from './shaft.ts';

/**
 * Natural angular frequency of two masses on their coupling, rad/s, without damping and play: √(k·(1/J_m + 1/J_L)), the load's
 * inertia referred to the motor; null for a rigid shaft.
 *
 * Source: the free two-mass system of the textbooks on vibration (from memory).
 */
export function torsionalFrequency(shaft: Shaft): number | null {
  if (shaft.coupling === null) return null;
  return Math.sqrt(shaft.coupling.stiffness * (1 / shaft.motorInertia + 1 / shaft.loadInertia));
}
