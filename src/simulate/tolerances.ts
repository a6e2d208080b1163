import type { Scenario } from '../scenario/scenario.ts';

/**
 * Absolute tolerances, as the relative tolerance times a size that is typical of each state: flux linkage at no load
 * for fluxes, synchronous speed for speed, one turn for position. A state passing through zero is then as accurate as
 * elsewhere, and no more work is spent on it.
 */
export function stateScales(scenario: Scenario): { flux: number; speed: number; position: number } {
  const omega = 2 * Math.PI * scenario.supply.frequency;
  return {
    flux: (scenario.supply.lineVoltage * Math.sqrt(2 / 3)) / omega,
    speed: omega / scenario.machine.polePairs,
    position: 2 * Math.PI,
  };
}

/** Width to which events are located on the dense output, s; a thousandth of the accuracy promised (1e-9 s). */
export const EVENT_WIDTH = 1e-12;

/**
 * Spacing of the points inside a step at which event functions are looked at, as a fraction of the supply period.
 * Currents and torque swing at up to twice the supply frequency: 24 points a period see every pair of crossings
 * farther apart than 1/24 period. Speed is smoothed by the inertia: 8 points are plenty.
 */
export const PROBES_PER_PERIOD = { electrical: 24, speed: 8 } as const;
