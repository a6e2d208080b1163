import { squared } from '../numeric/raised.ts';
import { couplingTorque, flankPosition } from './coupling.ts';
import { loadSideFactor, motorSideFactor } from './gear.ts';
import { type LoadCoefficients, loadCoefficients, smoothTorque, windageTorque } from './loadTorque.ts';
import type { Shaft } from './shaft.ts';
import { loadMass, type ShaftMode, TWIST } from './shaftMode.ts';
import { effectiveInertia } from './shaftRates.ts';

/**
 * Torques and powers of the shaft at one instant. In every mode, exactly:
 * T_e·ω_m = d(kinetic)/dt + d(twistEnergy)/dt + frictionPower + lossPower + loadPower + gearPower + couplingPower.
 */
export interface ShaftObservation {
  /**
   * All that acts against the motor's shaft but its inertia, N·m, positive against forward rotation. One mass: load, friction
   * and windage, through the gear with its loss (held: without). Two masses: windage, bearings and the coupling.
   */
  loadTorque: number;
  /** What the coupling carries to the load, N·m; 0 where motor and load are one mass. */
  couplingTorque: number;
  /** Dry friction of motor and load, W. */
  frictionPower: number;
  /** Windage of the motor, W. */
  lossPower: number;
  /** Into the load other than by dry friction: viscous, fan, gravity, constant power, table, W. */
  loadPower: number;
  /** Lost in the gear, W. */
  gearPower: number;
  /** Lost in the coupling's damper, W. */
  couplingPower: number;
  /** J */
  kinetic: number;
  /** Elastic energy of the coupling, J. */
  twistEnergy: number;
}

/** An observation with everything zero, to be filled. */
export function newShaftObservation(): ShaftObservation {
  return {
    loadTorque: 0,
    couplingTorque: 0,
    frictionPower: 0,
    lossPower: 0,
    loadPower: 0,
    gearPower: 0,
    couplingPower: 0,
    kinetic: 0,
    twistEnergy: 0,
  };
}

/**
 * Fills `out` with torques and powers at one instant.
 *
 * @param y states, the shaft's from index `at`
 * @param airGapTorque N·m
 * @param load of this mode, for callers that read many instants
 */
export function observeShaft(
  shaft: Shaft,
  mode: ShaftMode,
  y: ArrayLike<number>,
  at: number,
  airGapTorque: number,
  out: ShaftObservation,
  load: LoadCoefficients = loadCoefficients(shaft, mode),
): void {
  const omega = y[at]!;
  const driven = y[at + (loadMass(shaft) === 0 ? 0 : 2)]!;
  const smooth = smoothTorque(load, driven);
  const motorMode = mode.masses[0]!;
  const windage = windageTorque(shaft, omega);
  const bearing = shaft.motor.friction * motorMode.direction;
  out.frictionPower = load.dry * driven + bearing * omega;
  out.lossPower = windage * omega;
  out.loadPower = smooth * driven;
  const { coupling } = shaft;
  if (coupling === null) {
    const factor = motorMode.held ? 1 : motorSideFactor(shaft, mode.power);
    out.loadTorque = factor * smooth + factor * load.dry + windage + bearing;
    const acceleration = motorMode.held ? 0 : (airGapTorque - out.loadTorque) / effectiveInertia(shaft, mode);
    const meshTorque = smooth + load.dry + shaft.loadInertia * acceleration;
    out.gearPower = (factor - 1) * meshTorque * omega;
    out.couplingTorque = 0;
    out.couplingPower = 0;
    out.kinetic = 0.5 * shaft.inertia * squared(omega);
    out.twistEnergy = 0;
    return;
  }
  const carried = couplingTorque(shaft, mode.flank, y, at);
  const touching = mode.flank !== 0;
  const elastic = touching ? y[at + TWIST]! - flankPosition(coupling, mode.flank) : 0;
  out.loadTorque = windage + bearing + carried;
  out.couplingTorque = carried;
  out.gearPower = (1 - loadSideFactor(shaft, mode.power)) * carried * driven;
  out.couplingPower = touching ? coupling.damping * squared(omega - driven) : 0;
  out.kinetic = 0.5 * shaft.motorInertia * squared(omega) + 0.5 * shaft.loadInertia * squared(driven);
  out.twistEnergy = 0.5 * coupling.stiffness * squared(elastic);
}
