import { scaledByTwo } from './binaryScale.ts';

/**
 * Exponential functions from + − * alone, the same bits in every engine (see sineCosine.ts).
 *
 * Method: x = k·ln 2 + r with |r| ≤ ln 2 / 2, ln 2 in two parts (Cody and Waite 1980); Taylor's series to r^13, with what
 * the reduction loses kept as a second, small term; scaling by 2^k is exact. Error: 1 unit in the last place, 2 of
 * e^x − 1.
 */

/** ln 2 = UPPER + LOWER; UPPER has 32 bits, so that its product with any exponent is exact. */
const UPPER = 0.6931471803691238;
/** See UPPER. */
const LOWER = 1.9082149292705877e-10;
/** Above this the result is infinite: ln of the largest number. */
const LARGEST = 709.782712893384;
/** Below this the result is 0: ln of half the smallest number. */
const SMALLEST = -745.1332191019412;
/** Below this e^x − 1 is −1 to the last place: e^−38 < 2^-54. */
const ONLY_MINUS_ONE = -38;
/** 2^-54; below this size e^x − 1 is x to the last place. */
const TINY = 5.551115123125783e-17;

/** Coefficients of Taylor's series, 1/n!; the first one left out is below 5e-18 of the result. */
const E3 = 1 / 6;
const E4 = 1 / 24;
const E5 = 1 / 120;
const E6 = 1 / 720;
const E7 = 1 / 5040;
const E8 = 1 / 40_320;
const E9 = 1 / 362_880;
const E10 = 1 / 3_628_800;
const E11 = 1 / 39_916_800;
const E12 = 1 / 479_001_600;
const E13 = 1 / 6_227_020_800;

/** e^x. */
export function exponential(x: number): number {
  if (x > LARGEST) return Number.POSITIVE_INFINITY;
  if (x < SMALLEST) return 0;
  const k = Math.round(x / Math.LN2);
  return Number.isNaN(k) ? k : scaledByTwo(1 + lessOneNear(x, k), k);
}

/** e^x − 1, without the loss of digits near x = 0. */
export function exponentialLessOne(x: number): number {
  if (x > LARGEST) return Number.POSITIVE_INFINITY;
  if (x < ONLY_MINUS_ONE) return -1;
  if (Math.abs(x) < TINY) return x;
  const k = Math.round(x / Math.LN2);
  if (Number.isNaN(k)) return k;
  const near = lessOneNear(x, k);
  if (k === 0) return near;
  // 2^k is taken out of both terms so that it overflows no sooner than the result.
  return scaledByTwo(1 - scaledByTwo(1, -k) + near, k);
}

/** e^r − 1 for r = x − k·ln 2, |r| ≤ ln 2 / 2. */
function lessOneNear(x: number, k: number): number {
  const near = x - k * UPPER;
  const part = k * LOWER;
  const r = near - part;
  const lost = near - r - part;
  const high = E7 + r * (E8 + r * (E9 + r * (E10 + r * (E11 + r * (E12 + r * E13)))));
  const series = 0.5 + r * (E3 + r * (E4 + r * (E5 + r * (E6 + r * high))));
  return r + (r * r * series + lost * (1 + r));
}
