/** A number, and its bits as two words in the machine's order of bytes; nothing in them outlives a call. */
const number = new Float64Array(1);
const words = new Uint32Array(number.buffer);
/** Which of the words holds the exponent: the one of 1 that is not 0. */
number[0] = 1;
const EXPONENT_WORD = words[0] === 0 ? 1 : 0;
/** Exponent that stands in the bits for 2^0 (IEEE 754, binary64). */
const BIAS = 1023;
/** Bits of the upper word below the exponent. */
const UPPER_FRACTION = 20;
/** 2^54 makes every number below the normal ones a normal one. */
const LIFT = 54;
/** Smallest exponent of a normal number. */
const LEAST_NORMAL = -1022;

/** Whole k with 2^k ≤ x < 2^(k+1), for finite x > 0. */
export function binaryExponent(x: number): number {
  number[0] = x;
  const biased = words[EXPONENT_WORD]! >>> UPPER_FRACTION;
  return biased === 0 ? binaryExponent(x * powerOfTwo(LIFT)) - LIFT : biased - BIAS;
}

/** x · 2^k for whole k of −1100 … 1100; exact, or rounded once where the result is below the normal numbers. */
export function scaledByTwo(x: number, k: number): number {
  if (k > BIAS) return x * powerOfTwo(BIAS) * powerOfTwo(k - BIAS);
  if (k < LEAST_NORMAL) return x * powerOfTwo(k - LEAST_NORMAL) * powerOfTwo(LEAST_NORMAL);
  return x * powerOfTwo(k);
}

/** 2^k for a normal number: −1022 ≤ k ≤ 1023. */
function powerOfTwo(k: number): number {
  number[0] = 0;
  words[EXPONENT_WORD] = (k + BIAS) << UPPER_FRACTION;
  return number[0]!;
}
