import { exponential } from './exponential.ts';
import { logarithm } from './logarithm.ts';

/** 1/√(2π): the density at 0. */
const PEAK_DENSITY = 0.3989422804014327;
/**
 * Beyond this many deviations the continued fraction is used: up to here the series loses no more than a
 * digit.
 */
const SERIES_UP_TO = 1.5;
/** Terms of the continued fraction; at SERIES_UP_TO what is left out is below 1e-16 of the result. */
const FRACTION_TERMS = 200;
/** Beyond this many deviations the tail is below the smallest number. */
const NOTHING_BEYOND = 38.6;
/** Per deviation; multiples of 1/16 up to NOTHING_BEYOND have exact squares. */
const STEPS = 16;

/**
 * Distribution function of the standard normal distribution: the probability of a value up to `x`, also far
 * into the lower tail. The upper tail beyond x, without loss of digits, is `normalDistribution(-x)`.
 *
 * Method: the series 26.2.11 of Abramowitz and Stegun, Handbook of Mathematical Functions, 1964, up to 1.5
 * deviations, Laplace's continued fraction 26.2.14 beyond. Error: 20 units in the last place.
 *
 * @param x in standard deviations
 */
export function normalDistribution(x: number): number {
  const size = Math.abs(x);
  if (Number.isNaN(x)) return x;
  if (size <= SERIES_UP_TO) return 0.5 + (x < 0 ? -shareWithin(size) : shareWithin(size));
  const tail = size > NOTHING_BEYOND ? 0 : density(size) / tailFraction(size);
  return x < 0 ? tail : 1 - tail;
}

/** Probability of a value from 0 to x: density · (x + x³/3 + x⁵/(3·5) + …). */
function shareWithin(x: number): number {
  let term = x;
  let sum = 0;
  for (let odd = 3; sum + term !== sum; odd += 2) {
    sum += term;
    term *= (x * x) / odd;
  }
  return density(x) * sum;
}

/** x + 1/(x + 2/(x + 3/(x + …))): density over tail. */
function tailFraction(x: number): number {
  let fraction = x;
  for (let n = FRACTION_TERMS; n > 0; n--) fraction = x + n / fraction;
  return fraction;
}

/** Density at x ≥ 0; x² in two parts, as its rounding would be magnified x²/2 times. */
function density(x: number): number {
  const coarse = Math.floor(x * STEPS) / STEPS;
  const fine = -0.5 * (x - coarse) * (x + coarse);
  return PEAK_DENSITY * exponential(-0.5 * coarse * coarse) * exponential(fine);
}

/*
 * Wichura, Algorithm AS 241 (PPND16), Applied Statistics 37 (1988), 477-484: coefficients of numerator and
 * denominator from the constant term up, for the middle, the tails and the far tails.
 */

/** See above; in MIDDLE² − (p − ½)². */
const MIDDLE_ABOVE = [
  3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946, 45921.95393154987,
  67265.7709270087, 33430.57558358813, 2509.0809287301227,
];
/** See above. */
const MIDDLE_BELOW = [
  1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597, 39307.89580009271,
  28729.085735721943, 5226.495278852854,
];
/** See above; in r − TAIL_ORIGIN with r = √(−ln p). */
const TAIL_ABOVE = [
  1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045, 1.2704582524523684,
  0.2417807251774506, 0.022723844989269184, 0.0007745450142783414,
];
/** See above. */
const TAIL_BELOW = [
  1, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008, 0.015198666563616457,
  0.0005475938084995345, 1.0507500716444169e-9,
];
/** See above; in r − FAR_TAIL_FROM. */
const FAR_ABOVE = [
  6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487, 0.026532189526576124,
  0.0012426609473880784, 2.7115555687434876e-5, 2.0103343992922881e-7,
];
/** See above. */
const FAR_BELOW = [
  1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615, 0.0007868691311456133,
  1.8463183175100548e-5, 1.421511758316446e-7, 2.0442631033899397e-15,
];
/** |p − ½| up to which the middle is used. */
const MIDDLE = 0.425;
/** √(−ln p) around which the tails are written. */
const TAIL_ORIGIN = 1.6;
/** √(−ln p) from which on the far tails are used: p below 1.4e-11. */
const FAR_TAIL_FROM = 5;

/**
 * Inverse of the distribution function of the standard normal distribution, in standard deviations; ∓∞ at 0
 * and 1. The algorithm states a relative error of 1e-16 in exact arithmetic; evaluated here it is below
 * 1e-15.
 *
 * @param p probability, 0 … 1; for a small upper tail q, minus the inverse of q keeps the digits
 * @throws RangeError when p is no probability
 */
export function inverseNormalDistribution(p: number): number {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`${p} is no probability: 0 to 1 would be right`);
  const fromMiddle = p - 0.5;
  if (Math.abs(fromMiddle) <= MIDDLE) {
    const r = MIDDLE * MIDDLE - fromMiddle * fromMiddle;
    return (fromMiddle * polynomial(MIDDLE_ABOVE, r)) / polynomial(MIDDLE_BELOW, r);
  }
  const size = tailQuantile(fromMiddle < 0 ? p : 1 - p);
  return fromMiddle < 0 ? -size : size;
}

/** How far out the tail of this probability begins. */
function tailQuantile(tail: number): number {
  if (tail === 0) return Number.POSITIVE_INFINITY;
  const r = Math.sqrt(-logarithm(tail));
  return r <= FAR_TAIL_FROM
    ? polynomial(TAIL_ABOVE, r - TAIL_ORIGIN) / polynomial(TAIL_BELOW, r - TAIL_ORIGIN)
    : polynomial(FAR_ABOVE, r - FAR_TAIL_FROM) / polynomial(FAR_BELOW, r - FAR_TAIL_FROM);
}

/** By Horner's scheme, coefficients from the constant term up. */
function polynomial(coefficients: readonly number[], x: number): number {
  return coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0);
}
