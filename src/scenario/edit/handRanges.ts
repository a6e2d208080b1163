import { decadeBelow } from '../../numeric/decadeBelow.ts';
import { squared } from '../../numeric/raised.ts';
import type { Scenario } from '../scenario.ts';
import type { HandRange } from './adjustable.ts';

/** rad/s at the motor shaft. */
export function synchronousSpeedOfMotor({ supply, machine }: Scenario): number {
  return (2 * Math.PI * supply.frequency) / machine.polePairs;
}

/** rad/s at the load's shaft, behind a gear. */
export function synchronousSpeedOfLoad(scenario: Scenario): number {
  return synchronousSpeedOfMotor(scenario) / (scenario.load.gear?.ratio ?? 1);
}

/** Leakage reactance of stator and all cages at supply frequency, Ω: what limits the current at standstill. */
export function lockedRotorReactance({ supply, machine }: Scenario): number {
  const cages = machine.cages.reduce((sum, { Llr }) => sum + 1 / Llr, 0);
  return 2 * Math.PI * supply.frequency * (machine.Lls + 1 / cages);
}

/**
 * Torque at rated output, N·m: as stated, from power and speed, else half the largest torque that the leakage lets through (machines
 * are rated at a third to a half of it). Sets only how far a slider reaches.
 */
export function ratedTorque(scenario: Scenario): number {
  const { torque, power, speed } = scenario.machine.rated;
  const synchronous = synchronousSpeedOfMotor(scenario);
  if (torque !== null) return torque;
  if (power !== null) return power / (speed ?? synchronous);
  return squared(scenario.supply.lineVoltage) / (4 * synchronous * lockedRotorReactance(scenario));
}

/** A range whose ends have one digit, both outwards. */
export function niceRange(min: number, max: number, log: boolean): HandRange {
  return { min: oneDigit(min, Math.floor), max: oneDigit(max, Math.ceil), log };
}

function oneDigit(value: number, round: (value: number) => number): number {
  if (value === 0) return 0;
  const decade = decadeBelow(Math.abs(value));
  return Number((round(value / decade) * decade).toPrecision(1));
}
