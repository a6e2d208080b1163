import { squared } from '../numeric/raised.ts';
import type { TestReading, TestReadings } from '../scenario/nameplate.ts';

/** Single-cage circuit per phase of the equivalent star, reactances at rated frequency, Ω. */
export interface TestCircuit {
  readonly R1: number;
  readonly R2: number;
  readonly X1: number;
  readonly X2: number;
  readonly XM: number;
  /** Iron, bearings and windage together, W. */
  readonly rotationalLoss: number;
}

/** Impedance per phase of the equivalent star as seen by a reading, Ω. */
export function impedanceOf({ voltage, current, power }: TestReading): {
  readonly size: number;
  readonly resistance: number;
  readonly reactance: number;
} {
  const size = voltage / (Math.sqrt(3) * current);
  const resistance = power / (3 * squared(current));
  return { size, resistance, reactance: Math.sqrt(Math.max(squared(size) - squared(resistance), 0)) };
}

/**
 * The textbooks' way from the three tests to a circuit: the magnetising branch carries nothing at standstill, the no-load
 * impedance is X1 + XM. Good for a few per cent; here the start of the exact solution.
 *
 * @param statorShare share of the stator in the leakage reactance
 * @remarks Source: S. J. Chapman, Electric Machinery Fundamentals, section on the circuit model's parameters (from memory); as
 * IEEE Std 112 without its iteration.
 */
export function testShortcut(readings: TestReadings, statorShare: number): TestCircuit {
  const { terminalResistance, noLoad, lockedRotor, frequency } = readings;
  // Half the resistance between two terminals, in star as in delta's equivalent star.
  const R1 = terminalResistance / 2;
  const locked = impedanceOf(lockedRotor);
  const leakage = (locked.reactance * frequency) / lockedRotor.frequency;
  const X1 = statorShare * leakage;
  return {
    R1,
    R2: locked.resistance - R1,
    X1,
    X2: leakage - X1,
    XM: (impedanceOf(noLoad).size * frequency) / noLoad.frequency - X1,
    rotationalLoss: noLoad.power - 3 * squared(noLoad.current) * R1,
  };
}
