import type { LoadCoefficients } from './loadTorque.ts';
import { newShaftObservation, observeShaft } from './observeShaft.ts';
import type { Shaft } from './shaft.ts';
import type { ShaftMode } from './shaftMode.ts';

/** Powers and torque of the shaft at one instant, as places in an array of numbers (as `FLOW` of the machine). */
export const SHAFT_FLOW = {
  /** Dry friction of motor and load, W. */
  frictionPower: 0,
  /** Windage of the motor, W. */
  lossPower: 1,
  /** Into the load other than by dry friction, W. */
  loadPower: 2,
  /** Lost in the gear, W. */
  gearPower: 3,
  /** Lost in the coupling's damper, W. */
  couplingPower: 4,
  /** What the coupling carries to the load, N·m. */
  couplingTorque: 5,
} as const;

/** Numbers that they take. */
export const SHAFT_FLOW_COUNT = 6;

/** Reads them: states, the shaft's from index `at`; air-gap torque, N·m. */
export type ShaftPowers = (y: ArrayLike<number>, at: number, torque: number, out: Float64Array) => void;

/** Prepares the reading in one mode: for one mass without a gear by its own short formula, otherwise by `observeShaft`. */
export function shaftPowers(shaft: Shaft, mode: ShaftMode, load: LoadCoefficients): ShaftPowers {
  if (shaft.coupling !== null || shaft.gear !== null || load.power !== 0)
    return byObservation(shaft, mode, load);
  const dry = load.dry + shaft.motor.friction * mode.masses[0]!.direction;
  const { constant, viscous, fan } = load;
  const { windage } = shaft.motor;
  return (y, at, _torque, out) => {
    const omega = y[at]!;
    const size = Math.abs(omega);
    out[SHAFT_FLOW.frictionPower] = dry * omega;
    out[SHAFT_FLOW.lossPower] = windage * omega * omega * size;
    out[SHAFT_FLOW.loadPower] = (constant + omega * (viscous + fan * size)) * omega;
    out[SHAFT_FLOW.gearPower] = 0;
    out[SHAFT_FLOW.couplingPower] = 0;
    out[SHAFT_FLOW.couplingTorque] = 0;
  };
}

function byObservation(shaft: Shaft, mode: ShaftMode, load: LoadCoefficients): ShaftPowers {
  const seen = newShaftObservation();
  return (y, at, torque, out) => {
    observeShaft(shaft, mode, y, at, torque, seen, load);
    out[SHAFT_FLOW.frictionPower] = seen.frictionPower;
    out[SHAFT_FLOW.lossPower] = seen.lossPower;
    out[SHAFT_FLOW.loadPower] = seen.loadPower;
    out[SHAFT_FLOW.gearPower] = seen.gearPower;
    out[SHAFT_FLOW.couplingPower] = seen.couplingPower;
    out[SHAFT_FLOW.couplingTorque] = seen.couplingTorque;
  };
}
