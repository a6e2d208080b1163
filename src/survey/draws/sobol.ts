import { DIRECTION_ROWS } from './directionRows.ts';
import { mixedBits } from './mixedBits.ts';

/** Most dimensions of a point. */
export const MOST_SOBOL_DIMENSIONS = DIRECTION_ROWS.length + 1;
/** Bits of a coordinate. */
const BITS = 32;
/** 2^32: number of points, and of cells along each coordinate. */
export const MOST_SOBOL_POINTS = 4_294_967_296;

/**
 * Direction numbers of each dimension as fractions of 2^32; of the first, whose rule is that of van der
 * Corput, the powers of ½.
 */
const DIRECTIONS: readonly (readonly number[])[] = [
  Array.from({ length: BITS }, (_, k) => (1 << (BITS - 1 - k)) >>> 0),
  ...DIRECTION_ROWS.map(directionsOf),
];

/** Continues a row of the table to 32 direction numbers by the recurrence of its polynomial. */
function directionsOf([a, ...m]: readonly number[]): number[] {
  const degree = m.length;
  const directions = m.map((number, k) => (number << (BITS - 1 - k)) >>> 0);
  for (let k = degree; k < BITS; k++) {
    const oldest = directions[k - degree]!;
    let next = oldest ^ (oldest >>> degree);
    for (let i = 1; i < degree; i++) if ((a! >>> (degree - 1 - i)) & 1) next ^= directions[k - i]!;
    directions.push(next >>> 0);
  }
  return directions;
}

/**
 * A coordinate of the plain Sobol sequence, in the order of the Gray code, as its authors print it.
 *
 * @param index number of the point, 0 … 2^32 − 1
 * @param dimension from 0
 * @returns the coordinate times 2^32: 0 … 2^32 − 1
 */
export function plainSobol(index: number, dimension: number): number {
  const directions = DIRECTIONS[dimension]!;
  let coordinate = 0;
  for (let gray = (index ^ (index >>> 1)) >>> 0, k = 0; gray !== 0; gray >>>= 1, k++)
    if (gray & 1) coordinate ^= directions[k]!;
  return coordinate >>> 0;
}

/**
 * A point of a scrambled Sobol sequence: evenly spread like the plain one (every 2^m points from a multiple
 * of 2^m on put one into each of 2^m equal strata of every coordinate), but each point by itself uniform
 * over the cube, and another sequence for every seed. Any point is computed by itself. Scrambling: Owen,
 * Randomly permuted (t,m,s)-nets and (t,s)-sequences, 1995, with a hash in place of stored draws.
 *
 * @param index number of the point, 0 … 2^32 − 1
 * @param dimensions 1 … MOST_SOBOL_DIMENSIONS
 * @param seed whole number, 0 … 2^32 − 1
 * @returns coordinates between 0 and 1, both excluded: middles of cells 2^-32 wide
 * @throws RangeError when the sequence has no such point
 */
export function sobolPoint(index: number, dimensions: number, seed: number): number[] {
  if (!(Number.isInteger(index) && index >= 0 && index < MOST_SOBOL_POINTS))
    throw new RangeError(`point ${index}: a Sobol sequence has points 0 to ${MOST_SOBOL_POINTS - 1}`);
  if (dimensions > MOST_SOBOL_DIMENSIONS)
    throw new RangeError(
      `${dimensions} dimensions: a Sobol sequence here has up to ${MOST_SOBOL_DIMENSIONS}`,
    );
  return Array.from({ length: dimensions }, (_, dimension) => {
    const cell = scrambled(plainSobol(index, dimension), mixedBits(mixedBits(seed) ^ dimension));
    return (cell + 0.5) / MOST_SOBOL_POINTS;
  });
}

/**
 * Flips each bit or not by a draw that depends on all bits above it: halves, quarters, … of the range
 * change places at random.
 */
function scrambled(coordinate: number, seed: number): number {
  let flips = 0;
  // The bits above, behind a 1 that tells 0, 00 and 000 apart.
  let above = 1;
  for (let place = BITS - 1; place >= 0; place--) {
    flips = (flips << 1) | (mixedBits(seed ^ mixedBits(above)) & 1);
    above = (above << 1) | ((coordinate >>> place) & 1);
  }
  return (coordinate ^ flips) >>> 0;
}
