import type { Scenario } from '../scenario/scenario.ts';

/** Rotor and load as one mass, with the load torque split by its behaviour through zero speed. */
export interface Shaft {
  /** Rotor plus load, kg·m². */
  readonly inertia: number;
  /** N·m·s/rad */
  readonly viscous: number;
  /** N·m·s²/rad² */
  readonly fan: number;
  /** N·m, positive against forward rotation in either direction. */
  readonly gravity: number;
  /** Dry friction while turning, N·m. */
  readonly friction: number;
  /** Dry friction that holds the shaft at rest, N·m. */
  readonly breakaway: number;
}

/**
 * Which way dry friction acts: against forward rotation (+1), against reverse rotation (−1), or holding the shaft at
 * rest (0). Fixed within a segment, so that the right-hand side stays smooth.
 */
export type FrictionDirection = -1 | 0 | 1;

/** Sums the loads of a scenario by kind. */
export function shaftOf(scenario: Pick<Scenario, 'machine' | 'load'>): Shaft {
  const sum = { viscous: 0, fan: 0, gravity: 0, friction: 0, breakaway: 0 };
  for (const load of scenario.load.torques) {
    if (load.kind === 'friction') {
      sum.friction += load.torque;
      sum.breakaway += load.breakaway;
    } else if (load.kind === 'gravity') sum.gravity += load.torque;
    else sum[load.kind] += load.coefficient;
  }
  return { inertia: scenario.machine.inertia + scenario.load.inertia, ...sum };
}

/** Load torque without dry friction, N·m, positive against forward rotation. */
export function smoothLoadTorque(shaft: Shaft, omegaM: number): number {
  return shaft.gravity + omegaM * (shaft.viscous + shaft.fan * Math.abs(omegaM));
}

/** Dry friction torque while turning, N·m, positive against forward rotation. */
export function frictionTorque(shaft: Shaft, direction: FrictionDirection): number {
  return shaft.friction * direction;
}

/** True when dry friction can hold the shaft at rest against this torque, N·m. */
export function holds(shaft: Shaft, drivingTorque: number): boolean {
  return shaft.breakaway > 0 && Math.abs(drivingTorque) <= shaft.breakaway;
}
