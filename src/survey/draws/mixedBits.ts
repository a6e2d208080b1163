/** 2^32 divided by the golden ratio, odd: the step of splitmix32. */
const GOLDEN_STEP = 0x9e3779b9;
/**
 * Multipliers of the two rounds, from a public search for the least bias (from memory); odd, so that no two
 * words meet.
 */
const FIRST = 0x21f0aaad;
/** See FIRST. */
const SECOND = 0x735a2d97;

/**
 * A step of the generator splitmix32: every bit of a 32-bit word changes about half the bits of the result,
 * and no two words have the same result. Method: Steele, Lea and Flood, Fast Splittable Pseudorandom Number
 * Generators, OOPSLA 2014.
 *
 * @param word whole number, of which the lowest 32 bits count
 * @returns 0 … 2^32 − 1
 */
export function mixedBits(word: number): number {
  let bits = (word + GOLDEN_STEP) | 0;
  bits = Math.imul(bits ^ (bits >>> 16), FIRST);
  bits = Math.imul(bits ^ (bits >>> 15), SECOND);
  return (bits ^ (bits >>> 15)) >>> 0;
}
