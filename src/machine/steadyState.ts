import { add, type Complex, divide, magnitude, multiply } from '../numeric/complex.ts';
import { squared } from '../numeric/raised.ts';
import type { MachineData, Supply } from '../scenario/scenario.ts';
import { type Circuit, circuitOf } from './circuit.ts';
import { type Inserted, NOTHING_INSERTED } from './inserted.ts';
import { airGapAdmittance, cageAdmittance, coreAdmittance, steadyInductances } from './steadyInductances.ts';

/** The parts of a supply that a steady state depends on. */
export type SteadySupply = Pick<
  Supply,
  'lineVoltage' | 'frequency' | 'sourceResistance' | 'sourceInductance' | 'cable'
>;

/** Balanced steady state at one slip. Phasors are r.m.s., phase voltage of the source on the real axis. */
export interface SteadyState {
  /** Line current, A r.m.s. */
  readonly current: number;
  /** Air-gap torque, N·m, positive in the direction of the supply's sequence. */
  readonly torque: number;
  /** At the source terminals. */
  readonly powerFactor: number;
  /** Active power from the source, W. */
  readonly inputPower: number;
  /** W; rotor loss is slip × air-gap power, converted power (1 − slip) × air-gap power. */
  readonly airGapPower: number;
  /** Line-to-line at the motor, V r.m.s. */
  readonly terminalVoltage: number;
  readonly statorCurrent: Complex;
  /** Into each cage, motor convention (air-gap voltage over cage impedance), A. */
  readonly rotorCurrents: readonly Complex[];
  /** Into the core, same convention, A; null without a core. */
  readonly coreCurrent: Complex | null;
}

/**
 * The equivalent circuit per phase: (R + jωL) in series with jωLm ∥ Σ (Rrj/s + jωLlrj) (∥ the core's R + jωL). Saturable
 * branches enter with the inductances they have in that state, which is exact.
 *
 * Source: the equivalent circuit of the textbooks, such as Chapman, Electric Machinery Fundamentals (from memory); the
 * second cage and the core are further branches of it.
 *
 * @param slip against the supply's sequence: 1 at rest, 0 at synchronous speed, 2 at synchronous speed backwards
 */
export function steadyState(
  machine: MachineData,
  supply: SteadySupply,
  slip: number,
  inserted: Inserted = NOTHING_INSERTED,
): SteadyState {
  return steadyStateOf(circuitOf(machine, supply, inserted), supply, slip);
}

/** The same of a circuit that has been put together already, for whole curves. */
export function steadyStateOf(circuit: Circuit, supply: SteadySupply, slip: number): SteadyState {
  const omega = 2 * Math.PI * supply.frequency;
  const phaseVoltage: Complex = [supply.lineVoltage / Math.sqrt(3), 0];
  const inductances = steadyInductances(circuit, Math.SQRT2 * phaseVoltage[0], omega, slip);
  const air = airGapAdmittance(circuit, inductances, omega, slip);
  const impedance = add([circuit.R, omega * inductances.L], divide([1, 0], air));
  const statorCurrent = divide(phaseVoltage, impedance);
  const airGapVoltage = divide(statorCurrent, air);
  const rotorCurrents = circuit.Rr.map((Rr, j) =>
    multiply(airGapVoltage, cageAdmittance(Rr, inductances.gr[j]!, omega, slip)),
  );
  const airGapPower =
    slip === 0
      ? 0
      : 3 * rotorCurrents.reduce((p, i, j) => p + (squared(magnitude(i)) * circuit.Rr[j]!) / slip, 0);
  const motorImpedance = add([circuit.Rs, omega * inductances.Lls], divide([1, 0], air));
  const inputPower = 3 * phaseVoltage[0] * statorCurrent[0];
  const current = magnitude(statorCurrent);
  return {
    current,
    torque: (airGapPower * circuit.polePairs) / omega,
    powerFactor: inputPower / (3 * phaseVoltage[0] * current),
    inputPower,
    airGapPower,
    terminalVoltage: Math.sqrt(3) * magnitude(multiply(statorCurrent, motorImpedance)),
    statorCurrent,
    rotorCurrents,
    coreCurrent: circuit.core && multiply(airGapVoltage, coreAdmittance(circuit.core, omega)),
  };
}
