import type { DesignLetter } from '../scenario/nameplate.ts';

/** What is assumed about a circuit that the nameplate leaves open. */
export interface Ties {
  /** Stator share of the leakage reactance at locked rotor. */
  readonly statorShare: number;
  /** Ratio of the cages' leakages, inner over outer. */
  readonly leakageRatio: number;
  /** Ratio of the cages' resistances, outer over inner. */
  readonly resistanceRatio: number;
  /** Rated current times magnetising reactance over rated voltage: rated over no-load current, nearly. */
  readonly magnetising: number;
  /** Factor on the assumed share of the stator winding in the losses. */
  readonly statorLossFactor: number;
}

/**
 * Stator share of the locked-rotor leakage by NEMA design: IEEE Std 112 (from memory, high confidence). IEC designs: IEC
 * 60034-28 takes X1/X2' = 0.67, a share of 0.4, where nothing is known (from memory, medium confidence); H as C.
 */
const SHARES: Readonly<Record<string, number>> = { A: 0.5, B: 0.4, C: 0.3, D: 0.5, N: 0.4, H: 0.3 };

/** Stator share of the leakage reactance at locked rotor by design letter; the E and Y variants as their base. */
export function statorLeakageShare(design: DesignLetter): number {
  return SHARES[design[0]!]!;
}

/**
 * Ties of an ordinary motor with a double cage or deep bars. Cage ratios and the no-load current (20 to 60 % of rated current)
 * are common practice, no source.
 */
export function usualTies(design: DesignLetter): Ties {
  return {
    statorShare: statorLeakageShare(design),
    leakageRatio: 4,
    resistanceRatio: 4,
    magnetising: 2.3,
    statorLossFactor: 1,
  };
}

/**
 * Standard deviations (logarithmic) with which the ties hold: a few hundred times those of a stated item, so that they decide
 * only what the nameplate leaves open. A saturating stator leakage stands for the rotor's too, so that its share is looser; what
 * remains of it when saturated is taken to be about half.
 */
export const TIE_WIDTH = {
  share: 0.3,
  cages: 0.7,
  losses: 0.3,
  magnetising: 0.6,
  reversed: 0.1,
  saturatedShare: 0.7,
  saturation: 1,
} as const;
