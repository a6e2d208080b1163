import { flankAt, twistFor } from './coupling.ts';
import { steadyMotorTorque } from './gear.ts';
import { holdLimits } from './holdLimits.ts';
import { loadTorqueAt } from './loadTorque.ts';
import { consistentMode, settledMass } from './reviewShaft.ts';
import type { Shaft } from './shaft.ts';
import { driveOf } from './shaftEvents.ts';
import { loadMass, type MassMode, type ShaftMode } from './shaftMode.ts';
import { pieceAt } from './speedPieces.ts';

/**
 * State and mode at t = 0 without air-gap torque at rest, or at a constant speed. Two masses start in equilibrium: the coupling
 * is twisted by what it has to carry. At rest that is what the load cannot hold by itself.
 *
 * @param speed of the motor, rad/s; 0: at rest, held if anything holds
 */
export function initialShaft(shaft: Shaft, speed: number): { state: number[]; mode: ShaftMode } {
  return speed === 0 ? atRest(shaft) : running(shaft, speed);
}

function running(shaft: Shaft, speed: number): { state: number[]; mode: ShaftMode } {
  const direction = speed > 0 ? 1 : -1;
  const mass: MassMode = { direction, held: false };
  const loadTorque = loadTorqueAt(shaft, speed, direction);
  const power = shaft.gear === null || loadTorque * direction >= 0 ? 1 : -1;
  const pieces = shaft.pieces.map((load) => pieceAt(load, speed, -1));
  if (shaft.coupling === null)
    return { state: [speed, 0], mode: { masses: [mass], power, flank: 0, pieces } };
  const twist = twistFor(shaft.coupling, steadyMotorTorque(shaft, loadTorque, direction));
  const flank = flankAt(shaft.coupling, twist, 0);
  return { state: [speed, 0, speed, twist], mode: { masses: [mass, mass], power, flank, pieces } };
}

function atRest(shaft: Shaft): { state: number[]; mode: ShaftMode } {
  const pieces = shaft.pieces.map((load) => pieceAt(load, 0, -1));
  const { coupling } = shaft;
  const twist = coupling === null ? 0 : twistFor(coupling, torqueAtStandstill(shaft));
  const state = coupling === null ? [0, 0] : [0, 0, 0, twist];
  const flank = coupling === null ? 0 : flankAt(coupling, twist, 0);
  const masses = (coupling === null ? [0] : [0, 1]).map((mass): MassMode => {
    const limits = holdLimits(shaft, mass);
    return settledMass(limits, driveOf(shaft, { flank }, mass, limits)(state, 0, 0));
  });
  return { state, mode: consistentMode(shaft, { masses, power: 1, flank, pieces }, state, 0) };
}

/** The least coupling torque at which the load alone would stay at rest, a little inside its limits, N·m. */
function torqueAtStandstill(shaft: Shaft): number {
  const { center, forward, backward } = holdLimits(shaft, loadMass(shaft));
  const low = center - backward + shaft.negligibleTorque;
  const high = center + forward - shaft.negligibleTorque;
  return low > high ? center : Math.min(Math.max(0, low), high);
}
