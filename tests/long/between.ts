import fc from 'fast-check';

const GRID = 1_000_000;

/** Even over the range: fc.double is even over bit patterns, most of which are next to zero. */
export const between = (min: number, max: number) =>
  fc.noBias(fc.integer({ min: 0, max: GRID })).map((k) => min + ((max - min) * k) / GRID);
