/** What holds where a scenario says nothing. Every default that was used is listed among the origins. */

/** Relative tolerance of the integration; keeps the energy ledger below 1e-6 of the throughput. */
export const defaultRelativeTolerance = 1e-8;

/** Integration steps in one run. */
export const defaultMaxSteps = 200_000;

/** s; coil energised → contacts touch, a contactor of some ten kilowatts. Common practice, no source. */
export const defaultClosingTime = 0.02;

/** s; coil de-energised → contacts part. Common practice, no source. */
export const defaultOpeningTime = 0.01;

/**
 * Reactance over resistance of a source of which only the short-circuit power is known: behind a distribution
 * transformer of some hundred kVA. Common practice, no source; always listed as an assumption.
 */
export const assumedXOverR = 6;
