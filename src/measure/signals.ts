import { FLOW, FLOW_COUNT } from '../machine/flows.ts';
import { SHAFT_FLOW, SHAFT_FLOW_COUNT } from '../shaft/shaftPowers.ts';
import type { Segment } from '../simulate/segment.ts';
import type { Step } from '../simulate/step.ts';

/** What is integrated over time; order is that of `addRates`. */
export const INTEGRANDS = [
  /** Squared phase currents, A². */
  'iA2',
  'iB2',
  'iC2',
  /** Phase currents, A: their integrals are charges. */
  'iA',
  'iB',
  'iC',
  /** From the ideal source, W. */
  'sourcePower',
  'sourceLoss',
  'cableLoss',
  'lineResistorLoss',
  'statorLoss',
  'cage1Loss',
  'cage2Loss',
  /** Resistors at the slip rings, W. */
  'rotorResistorLoss',
  'ironLoss',
  /** Air-gap torque × speed, W. */
  'airGapPower',
  /** Dry friction of load and bearings, W. */
  'frictionPower',
  /** Windage of the motor, W. */
  'windagePower',
  /** Every load torque but dry friction, W. */
  'loadPower',
  'gearLoss',
  'couplingLoss',
] as const;

/** Name of a quantity that is integrated over time. */
export type Integrand = (typeof INTEGRANDS)[number];

/** What is looked at for extremes and crossings. */
export const SIGNALS = ['iA', 'iB', 'iC', 'torque', 'speed', 'terminalVoltage', 'couplingTorque'] as const;

/** Name of a quantity looked at for extremes and crossings. */
export type Signal = (typeof SIGNALS)[number];

/** Flows of machine and shaft at one instant of a run. */
export interface Flows {
  readonly machine: Float64Array;
  readonly shaft: Float64Array;
  /** Motor shaft, rad/s. */
  omegaM: number;
}

/** Flows to be filled. */
export function newFlows(): Flows {
  return { machine: new Float64Array(FLOW_COUNT), shaft: new Float64Array(SHAFT_FLOW_COUNT), omegaM: 0 };
}

/** Fills the flows at time t inside a step of a segment; `y` is scratch of at least the state's size. */
export function readFlows(segment: Segment, step: Step, t: number, y: Float64Array, out: Flows): void {
  const { model } = segment;
  step.read(t, 0, segment.size, y);
  const omegaM = y[model.size]!;
  out.omegaM = omegaM;
  model.observeFlows(t, y, omegaM, y[model.size + 1]!, out.machine);
  segment.powers(y, model.size, out.machine[FLOW.torque]!, out.shaft);
}

/**
 * Adds the integrands of one instant, times a weight, to sums in the order of `INTEGRANDS`, SI, as far as they depend on the instant alone;
 * heat in resistances is left to `finishRates`: the sums of squared currents stand in its place.
 */
export function addRates({ machine, shaft, omegaM }: Flows, weight: number, sums: Float64Array): void {
  const iAlpha = machine[FLOW.iAlpha]!;
  const beta = HALF_ROOT_3 * machine[FLOW.iBeta]!;
  const iB = beta - iAlpha / 2;
  const iC = -iAlpha / 2 - beta;
  sums[0]! += weight * iAlpha * iAlpha;
  sums[1]! += weight * iB * iB;
  sums[2]! += weight * iC * iC;
  sums[3]! += weight * iAlpha;
  sums[4]! += weight * iB;
  sums[5]! += weight * iC;
  sums[6]! += weight * machine[FLOW.sourcePower]!;
  sums[11]! += weight * machine[FLOW.irSquared1]!;
  sums[12]! += weight * machine[FLOW.irSquared2]!;
  sums[14]! += weight * machine[FLOW.coreSquared]!;
  sums[15]! += weight * machine[FLOW.torque]! * omegaM;
  sums[16]! += weight * shaft[SHAFT_FLOW.frictionPower]!;
  sums[17]! += weight * shaft[SHAFT_FLOW.lossPower]!;
  sums[18]! += weight * shaft[SHAFT_FLOW.loadPower]!;
  sums[19]! += weight * shaft[SHAFT_FLOW.gearPower]!;
  sums[20]! += weight * shaft[SHAFT_FLOW.couplingPower]!;
}

/** Turns sums of squared currents into heat; within a segment no resistance changes. */
export function finishRates({ circuit }: Segment, sums: Float64Array): void {
  const stator = sums[0]! + sums[1]! + sums[2]!;
  const cage1 = 1.5 * sums[11]!;
  sums[7] = circuit.sourceR * stator;
  sums[8] = circuit.cableR * stator;
  sums[9] = circuit.lineR * stator;
  sums[10] = circuit.Rs * stator;
  sums[11] = (circuit.Rr[0]! - circuit.externalRr) * cage1;
  sums[12] = 1.5 * (circuit.Rr[1] ?? 0) * sums[12]!;
  sums[13] = circuit.externalRr * cage1;
  sums[14] = 1.5 * (circuit.core?.R ?? 0) * sums[14]!;
}

/**
 * One signal of an instant, SI. The terminal voltage is the line-to-line r.m.s. value of a balanced system with the same space vector; it
 * is NaN while not all three terminals are connected, where no such system exists.
 */
export function signalOf({ machine, shaft, omegaM }: Flows, kind: Segment['kind'], signal: Signal): number {
  switch (signal) {
    case 'iA':
      return machine[FLOW.iAlpha]!;
    case 'iB':
      return HALF_ROOT_3 * machine[FLOW.iBeta]! - machine[FLOW.iAlpha]! / 2;
    case 'iC':
      return -machine[FLOW.iAlpha]! / 2 - HALF_ROOT_3 * machine[FLOW.iBeta]!;
    case 'torque':
      return machine[FLOW.torque]!;
    case 'speed':
      return omegaM;
    case 'terminalVoltage':
      return kind === 'three' ? Math.sqrt(1.5 * machine[FLOW.uSquared]!) : Number.NaN;
    case 'couplingTorque':
      return shaft[SHAFT_FLOW.couplingTorque]!;
    default:
      return signal satisfies never;
  }
}

/** β on the axis of phase B. */
const HALF_ROOT_3 = Math.sqrt(3) / 2;
