/** A factor at the low and the high end of what is not known. */
export interface FactorRange {
  readonly low: number;
  readonly high: number;
}

/** A stated number of operations per day: an estimate by those who work there. Common practice, no source. */
export const STATED_RATE: FactorRange = { low: 0.8, high: 1.2 };

/** Operations per day from a counter: the future is much like the past. Common practice, no source. */
export const COUNTED_RATE: FactorRange = { low: 0.9, high: 1.1 };

/**
 * A counter and stated operations per day that differ by more than this factor do not speak of the same thing: it is beyond what
 * `STATED_RATE` and a season explain. Common practice, no source.
 */
export const COUNTER_DISAGREES = 1.5;

/** A stated share of plugging. Common practice, no source. */
export const STATED_SHARE: FactorRange = { low: 0.8, high: 1.2 };

/** Every normal stop is said to be plugged: some are not. Common practice, no source. */
export const PLUG_EVERY_STOP: FactorRange = { low: 0.8, high: 1 };

/** A stated load inertia. Common practice, no source. */
export const STATED_INERTIA: FactorRange = { low: 0.8, high: 1.25 };

/** The load inertia that the standard demands a motor can start: real ones are mostly less. Common practice, no source. */
export const ASSUMED_INERTIA: FactorRange = { low: 0.2, high: 1.2 };

/** Error of a reading of contact wear, share of the wear allowance, either way. Common practice, no source. */
export const READING_ERROR = 0.05;
