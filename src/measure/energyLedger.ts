/**
 * Energy over the whole run, J. Every term is integrated on its own, none is a remainder.
 *
 * electricalIn = sourceLoss + statorLoss + rotorLoss + magneticChange + interruptionLoss + airGapWork
 * airGapWork   = kineticChange + frictionLoss + loadWork
 */
export interface EnergyLedger {
  /** From the ideal source behind the source impedance. */
  readonly electricalIn: number;
  readonly sourceLoss: number;
  readonly statorLoss: number;
  /** One entry per cage. */
  readonly rotorLoss: readonly number[];
  /** Stored in leakage, main and source inductances. */
  readonly magneticChange: number;
  /** Leakage energy released when ideal poles chop the current; 0 with arcing poles. */
  readonly interruptionLoss: number;
  readonly airGapWork: number;
  readonly kineticChange: number;
  readonly frictionLoss: number;
  /** Viscous, fan and gravity work. */
  readonly loadWork: number;
  /** Sum of the magnitudes of all terms of both balances' right-hand sides. */
  readonly throughput: number;
  /** Larger of the two balances' magnitudes of error, divided by the throughput. */
  readonly residual: number;
}
