import type { RatedOrigin } from '../machine/ratedPoint.ts';

/** Where a number of the rated point comes from, in words. */
export const RATED_WORDS: Readonly<Record<RatedOrigin, string>> = {
  given: 'given',
  circuitAtRatedPower: 'from the circuit, at the slip that delivers the rated power',
  circuitAtRatedSpeed: 'from the circuit, at the rated speed',
};
