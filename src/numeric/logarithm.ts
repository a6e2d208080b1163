import { binaryExponent, scaledByTwo } from './binaryScale.ts';

/**
 * Logarithms from + − * / alone, the same bits in every engine (see sineCosine.ts).
 *
 * Method: x = 2^k·(1 + f) with 1 + f between √½ and √2; ln(1 + f) = 2 artanh s with s = f/(2 + f), |s| ≤ 0.172, by its
 * series to s^21. Written with 2s = f − s·f, so that f, which is exact, carries the result and the rest is small. Error:
 * 1 unit in the last place, 2 of the decimal one.
 */

/** ln 2 = UPPER + LOWER; UPPER has 32 bits, so that its product with any exponent is exact. */
const UPPER = 0.6931471803691238;
/** See UPPER. */
const LOWER = 1.9082149292705877e-10;

/** Coefficients of 2 artanh s / s − 2, 2/(2n + 1); the first one left out is below 1e-18 of the result. */
const A3 = 2 / 3;
const A5 = 2 / 5;
const A7 = 2 / 7;
const A9 = 2 / 9;
const A11 = 2 / 11;
const A13 = 2 / 13;
const A15 = 2 / 15;
const A17 = 2 / 17;
const A19 = 2 / 19;
const A21 = 2 / 21;

/** Natural logarithm; −∞ of 0, not a number of what is negative. */
export function logarithm(x: number): number {
  if (!(x > 0) || x === Number.POSITIVE_INFINITY)
    return x === 0 ? Number.NEGATIVE_INFINITY : x > 0 ? x : Number.NaN;
  const exponent = binaryExponent(x);
  const mantissa = scaledByTwo(x, -exponent);
  const upperHalf = mantissa > Math.SQRT2;
  const k = upperHalf ? exponent + 1 : exponent;
  const f = (upperHalf ? 0.5 * mantissa : mantissa) - 1;
  const s = f / (2 + f);
  const z = s * s;
  const high = A11 + z * (A13 + z * (A15 + z * (A17 + z * (A19 + z * A21))));
  const series = z * (A3 + z * (A5 + z * (A7 + z * (A9 + z * high))));
  const half = 0.5 * f * f;
  return k * UPPER - (half - (s * (half + series) + k * LOWER) - f);
}

/** Logarithm to base 10. */
export function decimalLogarithm(x: number): number {
  return logarithm(x) / Math.LN10;
}
