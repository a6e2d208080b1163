import { exponential } from '../numeric/exponential.ts';
import { logarithm } from '../numeric/logarithm.ts';
import type { PerUnitCircuit } from './perUnitCircuit.ts';

/**
 * Unknowns of a double-cage circuit with losses, all free real numbers: every value is an exponential, so that none can become
 * negative, and the inner cage leaks more and resists less than the outer by construction.
 *
 * [ln Rs, ln Xls, ln Xm, ln Xouter, u, ln Rinner, w, ln Rc, ln mechanical loss, z] with Xinner = Xouter·(1 + eᵘ),
 * Router = Rinner·(1 + eʷ); z only where leakage saturates, to the share r + (1 − r)/(1 + e^−z), r the least.
 */
export type Unknowns = readonly number[];

/** Position of each unknown. */
export const AT = {
  Rs: 0,
  Xls: 1,
  Xm: 2,
  Xouter: 3,
  u: 4,
  Rinner: 5,
  w: 6,
  Rc: 7,
  mechanical: 8,
  z: 9,
} as const;

/**
 * Least that is taken to be left of a leakage inductance when its path is saturated: reactances of whole machines fall to about
 * half to two thirds (common practice, no source). A fit that may go lower meets every catalogue figure, with circuits whose
 * plugging currents are beyond belief.
 */
export const LEAST_REMAINING = 0.35;

/** Share that remains of the saturating leakage. */
export function remainingOf(z: number): number {
  return LEAST_REMAINING + (1 - LEAST_REMAINING) / (1 + exponential(-z));
}

/** The inverse of `remainingOf`. */
export function unknownOfRemaining(remaining: number): number {
  const share = (remaining - LEAST_REMAINING) / (1 - LEAST_REMAINING);
  return logarithm(share / (1 - share));
}

/** A circuit and the loss that rubs off on the shaft, multiples of rated power at rated speed. */
export interface Candidate {
  readonly circuit: PerUnitCircuit;
  readonly mechanicalLoss: number;
}

/**
 * The circuit that belongs to the unknowns; outer cage first.
 *
 * @param knee current around which leakage saturates, where x has a z
 */
export function candidateOf(x: Unknowns, knee: number): Candidate {
  const at = (key: keyof typeof AT) => exponential(x[AT[key]]!);
  const Xouter = at('Xouter');
  const Rinner = at('Rinner');
  return {
    circuit: {
      Rs: at('Rs'),
      Xls: at('Xls'),
      Xm: at('Xm'),
      cages: [
        { Rr: Rinner * (1 + at('w')), Xlr: Xouter },
        { Rr: Rinner, Xlr: Xouter * (1 + at('u')) },
      ],
      Rc: at('Rc'),
      saturation: x.length > AT.z ? { current: knee, remaining: remainingOf(x[AT.z]!) } : null,
    },
    mechanicalLoss: at('mechanical'),
  };
}

/** The unknowns of a circuit: the inverse of `candidateOf`. */
export function unknownsOf({
  Rs,
  Xls,
  Xm,
  outer,
  inner,
  Rc,
  mechanicalLoss,
}: {
  readonly Rs: number;
  readonly Xls: number;
  readonly Xm: number;
  readonly outer: { readonly Rr: number; readonly Xlr: number };
  readonly inner: { readonly Rr: number; readonly Xlr: number };
  readonly Rc: number;
  readonly mechanicalLoss: number;
}): Unknowns {
  const u = inner.Xlr / outer.Xlr - 1;
  const w = outer.Rr / inner.Rr - 1;
  return [Rs, Xls, Xm, outer.Xlr, u, inner.Rr, w, Rc, mechanicalLoss].map((value) => logarithm(value));
}
