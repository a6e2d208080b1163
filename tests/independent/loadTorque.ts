import type { LoadShape } from './scenarioShape.ts';

/** All load torques added up, by kind. */
export interface LoadSum {
  /** Dry friction in motion, N·m. */
  readonly friction: number;
  /** Torque up to which dry friction holds the shaft at rest, N·m. */
  readonly hold: number;
  /** Everything but dry friction at speed omega (rad/s), N·m, positive against forward rotation. */
  steady(omega: number): number;
}

/** Adds up the load torques of a scenario. */
export function loadSum(torques: readonly LoadShape[]): LoadSum {
  let friction = 0;
  let breakaway = 0;
  let viscous = 0;
  let fan = 0;
  let gravity = 0;
  for (const load of torques) {
    if (load.kind === 'friction') {
      friction += load.torque;
      breakaway += load.breakaway;
    } else if (load.kind === 'viscous') viscous += load.coefficient;
    else if (load.kind === 'fan') fan += load.coefficient;
    else gravity += load.torque;
  }
  return {
    friction,
    // A shaft at rest cannot be set in motion by less than the friction it would meet in motion.
    hold: Math.max(breakaway, friction),
    steady: (omega) => viscous * omega + fan * omega * Math.abs(omega) + gravity,
  };
}
