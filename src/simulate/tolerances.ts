import type { Circuit } from '../machine/circuit.ts';
import { squared } from '../numeric/raised.ts';
import type { Scenario } from '../scenario/scenario.ts';

/** Flux linkage at no load, Wb crest. */
export function nominalFlux({ supply }: Scenario): number {
  return (supply.lineVoltage * Math.sqrt(2 / 3)) / (2 * Math.PI * supply.frequency);
}

/**
 * Sizes typical of each state, by which the relative tolerance is multiplied for the absolute one: flux linkage at no load
 * for fluxes, synchronous speed for speeds, one turn for position, and for the twist of a coupling what the largest
 * steady torque of this leakage causes. A state passing through zero is then as accurate as elsewhere, and no more work
 * is spent on it.
 *
 * @returns Wb, rad/s, rad, rad
 */
export function stateScales(
  scenario: Scenario,
  circuit: Circuit,
): { flux: number; speed: number; position: number; twist: number } {
  const omega = 2 * Math.PI * scenario.supply.frequency;
  const flux = nominalFlux(scenario);
  const torque = (0.75 * circuit.polePairs * squared(flux)) / circuit.Ltransient;
  return {
    flux,
    speed: omega / scenario.machine.polePairs,
    position: 2 * Math.PI,
    twist: torque / (scenario.load.coupling?.stiffness ?? torque),
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
