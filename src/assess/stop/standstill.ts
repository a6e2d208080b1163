import type { Scenario } from '../../scenario/scenario.ts';
import { holdLimits } from '../../shaft/holdLimits.ts';
import { shaftOf } from '../../shaft/shaft.ts';

/** What pulls at a standing shaft and what holds it; all torques in N·m at the motor shaft. */
export interface Standstill {
  /** Magnitude of the load's torque that does not depend on the direction of motion. */
  readonly pull: number;
  /** Dry friction of load and bearings, and the loss of a gear, against the direction of the pull. */
  readonly friction: number;
  /** Of a brake that sets by itself when plugging has ended; 0 without one. */
  readonly brake: number;
  /** The starter has a brake that sets on its own command alone. */
  readonly brakeIdle: boolean;
}

/**
 * Pull and hold of the shaft at rest with the poles open. With an elastic coupling motor and load hold together what neither
 * would hold alone.
 */
export function standstill(scenario: Scenario): Standstill {
  const limits = holdLimits({ ...shaftOf(scenario), coupling: null }, 0);
  const { brake } = scenario.starter;
  return {
    pull: Math.abs(limits.center),
    // Limits that nothing holds are those of the integration.
    friction: limits.by === null ? 0 : limits.center > 0 ? limits.backward : limits.forward,
    brake: brake?.sets === 'afterPlugging' ? brake.torque : 0,
    brakeIdle: brake?.sets === 'onCommand',
  };
}
