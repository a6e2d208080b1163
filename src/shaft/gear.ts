import type { Shaft } from './shaft.ts';

/**
 * Torque on the motor side of the mesh over the same without loss: 1/η while the motor drives the load, η_back while the load
 * drives the motor. Torque at the load side T_g: T_m = T_g/(i·η) or T_m = T_g·η_back/i.
 *
 * @param power direction of power, +1 towards the load
 */
export function motorSideFactor(shaft: Shaft, power: -1 | 1): number {
  if (shaft.gear === null) return 1;
  return power > 0 ? 1 / shaft.gear.forward : shaft.gear.backward;
}

/** The inverse: what arrives at the load of a torque on the motor side, over the same without loss. */
export function loadSideFactor(shaft: Shaft, power: -1 | 1): number {
  if (shaft.gear === null) return 1;
  return power > 0 ? shaft.gear.forward : 1 / shaft.gear.backward;
}

/**
 * Torque on the motor side of the mesh that carries a load torque at constant speed, N·m.
 *
 * @param loadTorque referred without loss, N·m
 * @param direction direction of motion
 */
export function steadyMotorTorque(shaft: Shaft, loadTorque: number, direction: -1 | 1): number {
  return motorSideFactor(shaft, loadTorque * direction >= 0 ? 1 : -1) * loadTorque;
}
