import { frictionTorque, smoothLoadTorque } from '../shaft/shaft.ts';
import type { Instant, Segment } from '../simulate/segment.ts';
import { phaseCurrent, type Trajectory } from '../simulate/trajectory.ts';

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
  'statorLoss',
  'cage1Loss',
  'cage2Loss',
  /** Air-gap torque × speed, W. */
  'airGapPower',
  'frictionPower',
  /** Viscous, fan and gravity, W. */
  'loadPower',
] as const;

/** Name of a quantity that is integrated over time. */
export type Integrand = (typeof INTEGRANDS)[number];

/** What is looked at for extremes and crossings; order is that of `writeSignals`. */
export const SIGNALS = ['iA', 'iB', 'iC', 'torque', 'speed', 'terminalVoltage'] as const;

/** Name of a quantity looked at for extremes and crossings. */
export type Signal = (typeof SIGNALS)[number];

/** Writes the integrands of one instant into `out`, in the order of `INTEGRANDS`, SI. */
export function writeRates(trajectory: Trajectory, segment: Segment, at: Instant, out: Float64Array): void {
  const { machine, supply } = trajectory.scenario;
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
  out[7] = supply.sourceResistance * statorSquared;
  out[8] = machine.Rs * statorSquared;
  out[9] = 1.5 * machine.cages[0]!.Rr * at.irSquared1;
  out[10] = 1.5 * (machine.cages[1]?.Rr ?? 0) * at.irSquared2;
  out[11] = at.torque * at.omegaM;
  out[12] = frictionTorque(trajectory.shaft, segment.friction) * at.omegaM;
  out[13] = smoothLoadTorque(trajectory.shaft, at.omegaM) * at.omegaM;
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
}
