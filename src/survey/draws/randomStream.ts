import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plusFromState } from 'pure-rand/generator/xoroshiro128plus';
import { mixedBits } from './mixedBits.ts';

/** 2^32: numbers of streams have more bits than a word. */
const WORD = 4_294_967_296;
/** One for each word of the generator's state, so that these differ; their values do not matter. */
const SALTS = [0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344] as const;
/** 2^-54, half the smallest step of the draws: stands for 0, at which a quantile may be infinite. */
const HALF_STEP = 5.551115123125783e-17;

/**
 * A stream of independent numbers, uniform between 0 and 1, both excluded, in steps of 2^-53. Every stream
 * has a state of 128 bits of its own: run k draws from stream k, so that what other runs draw, or who draws
 * them, changes nothing.
 *
 * @param seed whole number, 0 … 2^32 − 1
 * @param stream whole number, 0 … 2^53 − 1
 */
export function randomStream(seed: number, stream: number): () => number {
  const low = stream % WORD;
  const high = (stream - low) / WORD;
  // The generator's own seeding leaves the first draws of neighbouring seeds alike. Mixing is one-to-one, so
  // that no two of 2^32 neighbouring streams of a seed begin in the same state.
  const state = SALTS.map((salt) => mixedBits(mixedBits(mixedBits(salt ^ seed) ^ low) ^ high));
  // A state of nothing but zeros would stay so.
  const generator = xoroshiro128plusFromState([state[0]! | 1, state[1]! | 0, state[2]! | 0, state[3]! | 0]);
  return () => Math.max(uniformFloat64(generator), HALF_STEP);
}
