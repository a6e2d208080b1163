import { exponential } from './exponential.ts';
import { logarithm } from './logarithm.ts';

/** Up to this whole exponent a power is multiplied out. */
const MOST_FACTORS = 1024;

/** x². */
export function squared(x: number): number {
  return x * x;
}

/**
 * x to the power of an exponent, as `**` defines it, but the same bits in every engine (see sineCosine.ts).
 *
 * Method: whole exponents up to 1024 by repeated squaring, error below |exponent| units in the last place; others as
 * e^(exponent · ln x), error below 1 + 2·|exponent · ln x| units; ½ as the root.
 */
export function raised(x: number, exponent: number): number {
  if (exponent === 2) return x * x;
  if (exponent === 0) return 1;
  if (exponent === 0.5 && x > 0) return Math.sqrt(x);
  const size = Math.abs(exponent);
  const whole = size % 1 === 0;
  if (whole && size <= MOST_FACTORS) {
    const product = multipliedOut(x, size);
    if (exponent > 0) return product;
    // Where the product is beyond the numbers its inverse may still be one.
    if (product !== 0 && Number.isFinite(product)) return 1 / product;
  }
  if (Number.isNaN(x) || Number.isNaN(exponent)) return Number.NaN;
  if (size === Number.POSITIVE_INFINITY && Math.abs(x) === 1) return Number.NaN;
  const result = x === 1 ? 1 : exponential(exponent * logarithm(Math.abs(x)));
  if (x > 0 || Object.is(x, 0)) return result;
  if (whole && size % 2 === 1) return -result;
  // Of what is negative only whole powers are numbers; −0 and −∞ count as their limits.
  return whole || size === Number.POSITIVE_INFINITY || x === 0 || x === Number.NEGATIVE_INFINITY
    ? result
    : Number.NaN;
}

/** x^n for n = 0 … MOST_FACTORS. */
function multipliedOut(x: number, n: number): number {
  let product = 1;
  let square = x;
  for (let left = n; ; square *= square) {
    if (left & 1) product *= square;
    left >>= 1;
    if (left === 0) return product;
  }
}
