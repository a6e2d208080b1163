import { decimalLogarithm } from '../numeric/logarithm.ts';
import { raised } from '../numeric/raised.ts';

/**
 * Does some work with this project's power and decimal logarithm in the place of the engine's.
 *
 * odex chooses steps and orders by `Math.pow` and `Math.log10` and cannot be given others, and these differ in the last bit
 * between engines. They are replaced only while the solver computes: the work is synchronous, and whatever way it ends the
 * functions that were there before it are put back, so that calls may lie within each other.
 */
export function withOwnPowers<T>(work: () => T): T {
  const { pow, log10 } = Math;
  Math.pow = raised;
  Math.log10 = decimalLogarithm;
  try {
    return work();
  } finally {
    Math.pow = pow;
    Math.log10 = log10;
  }
}
