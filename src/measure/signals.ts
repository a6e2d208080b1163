import type { Instant, Segment } from '../simulate/segment.ts';
import { phaseCurrent } from '../simulate/trajectory.ts';

/** What is integrated over time; order is that of `writeRates`. */
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

/** What is looked at for extremes and crossings; order is that of `writeSignals`. */
export const SIGNALS = ['iA', 'iB', 'iC', 'torque', 'speed', 'terminalVoltage', 'couplingTorque'] as const;

/** Name of a quantity looked at for extremes and crossings. */
export type Signal = (typeof SIGNALS)[number];

/** Writes the integrands of one instant into `out`, in the order of `INTEGRANDS`, SI. */
export function writeRates(segment: Segment, at: Instant, out: Float64Array): void {
  const { circuit } = segment;
  const iB = phaseCurrent(at, 1);
  const iC = phaseCurrent(at, 2);
  const statorSquared = 1.5 * (at.iAlpha * at.iAlpha + at.iBeta * at.iBeta);
  out[0] = at.iAlpha * at.iAlpha;
  out[1] = iB * iB;
  out[2] = iC * iC;
  out[3] = at.iAlpha;
  out[4] = iB;
  out[5] = iC;
  out[6] = 1.5 * (at.vAlpha * at.iAlpha + at.vBeta * at.iBeta);
  out[7] = circuit.sourceR * statorSquared;
  out[8] = circuit.cableR * statorSquared;
  out[9] = circuit.lineR * statorSquared;
  out[10] = circuit.Rs * statorSquared;
  out[11] = 1.5 * (circuit.Rr[0]! - circuit.externalRr) * at.irSquared1;
  out[12] = 1.5 * (circuit.Rr[1] ?? 0) * at.irSquared2;
  out[13] = 1.5 * circuit.externalRr * at.irSquared1;
  out[14] = 1.5 * (circuit.core?.R ?? 0) * at.coreSquared;
  out[15] = at.torque * at.omegaM;
  out[16] = at.frictionPower;
  out[17] = at.lossPower;
  out[18] = at.loadPower;
  out[19] = at.gearPower;
  out[20] = at.couplingPower;
}

/**
 * Writes the signals of one instant into `out`, in the order of `SIGNALS`, SI. The terminal voltage is the
 * line-to-line r.m.s. value of a balanced system with the same space vector; it is NaN while not all three terminals
 * are connected, where no such system exists.
 */
export function writeSignals(segment: Segment, at: Instant, out: Float64Array): void {
  out[0] = at.iAlpha;
  out[1] = phaseCurrent(at, 1);
  out[2] = phaseCurrent(at, 2);
  out[3] = at.torque;
  out[4] = at.omegaM;
  out[5] =
    segment.kind === 'three' ? Math.sqrt(1.5 * (at.uAlpha * at.uAlpha + at.uBeta * at.uBeta)) : Number.NaN;
  out[6] = at.couplingTorque;
}
