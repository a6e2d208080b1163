import { couplingTorque } from './coupling.ts';
import { loadCoefficients, smoothTorque, windageTorque } from './loadTorque.ts';
import type { Shaft } from './shaft.ts';
import type { ShaftMode } from './shaftMode.ts';

/**
 * A torque with the sign of the mesh's, N·m, positive when it drives the load forward: its product with the speed is positive
 * when power flows to the load, whatever direction of power is assumed, so that the choice of that direction is unique. Two
 * masses: the coupling's torque. One mass: the mesh's without loss, (J_m·T_l + J_L·(T_e − T_fw))/(J_m + J_L), J_L and T_l
 * referred to the motor.
 */
export function meshTorque(
  shaft: Shaft,
  mode: ShaftMode,
): (y: ArrayLike<number>, at: number, airGapTorque: number) => number {
  if (shaft.coupling !== null) return (y, at) => couplingTorque(shaft, mode.flank, y, at);
  const load = loadCoefficients(shaft, mode);
  const bearing = shaft.motor.friction * mode.masses[0]!.direction;
  return (y, at, torque) => {
    const omega = y[at]!;
    const loadTorque = smoothTorque(load, omega) + load.dry;
    const driving = torque - windageTorque(shaft, omega) - bearing;
    return (shaft.motorInertia * loadTorque + shaft.loadInertia * driving) / shaft.inertia;
  };
}
