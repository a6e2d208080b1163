import type { ScenarioShape } from './scenarioShape.ts';

/**
 * Position of each quantity in the state. Currents come first: of lines A, B, C, then of the windings of every cage, then of the
 * iron. Behind the motion stand integrals over time.
 */
export interface StateIndex {
  /** Number of currents. */
  readonly windings: number;
  readonly cages: number;
  /** Motor speed and position. */
  readonly omega: number;
  readonly theta: number;
  /** Load speed at its own shaft, and twist of the coupling seen at the motor; only with a coupling, else −1. */
  readonly loadSpeed: number;
  readonly twist: number;
  /** ∫i dt of line A; B and C follow. */
  readonly charge: number;
  /** ∫i² dt of line A; B and C follow. */
  readonly square: number;
  /** Heat of the first cage, J; the others follow. */
  readonly rotorHeat: number;
  /** J, each. */
  readonly statorHeat: number;
  readonly lineResistorHeat: number;
  readonly rotorResistorHeat: number;
  readonly ironHeat: number;
  readonly electricalIn: number;
  readonly airGapWork: number;
  /** Bearings and windage of the motor. */
  readonly motorLoss: number;
  readonly loadWork: number;
  readonly gearLoss: number;
  readonly damperLoss: number;
  readonly size: number;
}

/** Lays out the state of a scenario. */
export function stateIndex(scenario: ScenarioShape): StateIndex {
  const cages = scenario.machine.cages.length;
  const windings = 3 + 3 * cages + (scenario.machine.core ? 3 : 0);
  let next = windings;
  const place = (count = 1) => {
    const at = next;
    next += count;
    return at;
  };
  const omega = place();
  const theta = place();
  const elastic = scenario.load.coupling !== undefined;
  const loadSpeed = elastic ? place() : -1;
  const twist = elastic ? place() : -1;
  return {
    windings,
    cages,
    omega,
    theta,
    loadSpeed,
    twist,
    charge: place(3),
    square: place(3),
    rotorHeat: place(cages),
    statorHeat: place(),
    lineResistorHeat: place(),
    rotorResistorHeat: place(),
    ironHeat: place(),
    electricalIn: place(),
    airGapWork: place(),
    motorLoss: place(),
    loadWork: place(),
    gearLoss: place(),
    damperLoss: place(),
    size: next,
  };
}
