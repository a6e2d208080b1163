import type { WritableNumbers } from '../numeric/writableNumbers.ts';
import { flankPosition } from './coupling.ts';
import { loadSideFactor, motorSideFactor } from './gear.ts';
import { loadCoefficients } from './loadTorque.ts';
import type { Shaft } from './shaft.ts';
import { loadMass, type ShaftMode, TWIST } from './shaftMode.ts';

/**
 * Writes the derivatives of the shaft's states, which lie in `y` and `dydt` from index `at`: speed and position of the motor,
 * then, with a coupling, speed of the load (referred to the motor) and twist.
 */
export type ShaftRates = (
  y: ArrayLike<number>,
  at: number,
  airGapTorque: number,
  dydt: WritableNumbers,
) => void;

/**
 * The right-hand side of the shaft in one mode. Nothing in it asks for the sign of anything: the mode has decided.
 *
 * One mass behind a gear: (J_m + κ·J_L)·dω/dt = T_e − T_fw − κ·T_l, J_L and T_l referred, κ = 1/η or η_back.
 * Two masses: J_m·dω/dt = T_e − T_fw − T_c; J_L·dω_L/dt = κ'·T_c − T_l, κ' = η or 1/η_back.
 */
export function shaftRates(shaft: Shaft, mode: ShaftMode): ShaftRates {
  return shaft.coupling === null ? oneMass(shaft, mode) : twoMasses(shaft, mode);
}

function oneMass(shaft: Shaft, mode: ShaftMode): ShaftRates {
  const { direction, held } = mode.masses[0]!;
  if (held)
    return (y, at, _torque, dydt) => {
      dydt[at] = 0;
      dydt[at + 1] = y[at]!;
    };
  const load = loadCoefficients(shaft, mode);
  const factor = motorSideFactor(shaft, mode.power);
  const inertia = effectiveInertia(shaft, mode);
  const constant = factor * load.constant;
  const viscous = factor * load.viscous;
  const fan = factor * load.fan + shaft.motor.windage;
  const dry = factor * load.dry + shaft.motor.friction * direction;
  const power = factor * load.power;
  if (power === 0)
    return (y, at, torque, dydt) => {
      const omega = y[at]!;
      dydt[at] = (torque - (constant + omega * (viscous + fan * Math.abs(omega))) - dry) / inertia;
      dydt[at + 1] = omega;
    };
  return (y, at, torque, dydt) => {
    const omega = y[at]!;
    const smooth = constant + omega * (viscous + fan * Math.abs(omega)) + power / omega;
    dydt[at] = (torque - smooth - dry) / inertia;
    dydt[at + 1] = omega;
  };
}

/** Inertia of the one mass as the motor feels it through the gear's loss, kg·m². */
export function effectiveInertia(shaft: Shaft, mode: ShaftMode): number {
  return shaft.gear === null
    ? shaft.inertia
    : shaft.motorInertia + motorSideFactor(shaft, mode.power) * shaft.loadInertia;
}

function twoMasses(shaft: Shaft, mode: ShaftMode): ShaftRates {
  const { motorInertia, loadInertia } = shaft;
  const motorMode = mode.masses[0]!;
  const loadMode = mode.masses[loadMass(shaft)]!;
  const { windage } = shaft.motor;
  const bearing = shaft.motor.friction * motorMode.direction;
  const { constant, viscous, fan, power, dry } = loadCoefficients(shaft, mode);
  const factor = loadSideFactor(shaft, mode.power);
  const touching = mode.flank !== 0 && shaft.coupling !== null;
  const stiffness = touching ? shaft.coupling.stiffness : 0;
  const damping = touching ? shaft.coupling.damping : 0;
  const edge = touching ? flankPosition(shaft.coupling, mode.flank) : 0;
  const motorMoves = !motorMode.held;
  const loadMoves = !loadMode.held;
  return (y, at, torque, dydt) => {
    const omegaM = y[at]!;
    const omegaG = y[at + 2]!;
    const coupling = stiffness * (y[at + TWIST]! - edge) + damping * (omegaM - omegaG);
    dydt[at] = motorMoves
      ? (torque - windage * omegaM * Math.abs(omegaM) - bearing - coupling) / motorInertia
      : 0;
    dydt[at + 1] = omegaM;
    let smooth = constant + omegaG * (viscous + fan * Math.abs(omegaG));
    if (power !== 0) smooth += power / omegaG;
    dydt[at + 2] = loadMoves ? (factor * coupling - smooth - dry) / loadInertia : 0;
    dydt[at + TWIST] = omegaM - omegaG;
  };
}
