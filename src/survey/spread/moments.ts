/** An extreme value and the first run that has it. */
export interface RunValue {
  /** Number of the run, from 0. */
  readonly run: number;
  /** The metric in that run, SI. */
  readonly value: number;
}

/** Number, mean, deviation and extremes of what was taken. */
export interface Moments {
  readonly count: number;
  /** Null where nothing was taken. */
  readonly mean: number | null;
  /** Standard deviation of the sample (divisor n − 1); null below two values. */
  readonly deviation: number | null;
  readonly smallest: RunValue | null;
  readonly largest: RunValue | null;
}

/** Takes values one by one and keeps a handful of numbers. */
export interface MomentsTaker {
  readonly take: (run: number, value: number) => void;
  readonly result: () => Moments;
}

/**
 * Mean and deviation by updating (Welford, Technometrics 4 (1962) 419): no difference of large sums, relative
 * error of the deviation about n units in the last place at most.
 */
export function moments(): MomentsTaker {
  let count = 0;
  let mean = 0;
  let squares = 0;
  let smallest: RunValue | null = null;
  let largest: RunValue | null = null;
  return {
    take: (run, value) => {
      count++;
      const off = value - mean;
      mean += off / count;
      squares += off * (value - mean);
      if (smallest === null || value < smallest.value) smallest = { run, value };
      if (largest === null || value > largest.value) largest = { run, value };
    },
    result: () => ({
      count,
      mean: count > 0 ? mean : null,
      deviation: count > 1 ? Math.sqrt(squares / (count - 1)) : null,
      smallest,
      largest,
    }),
  };
}
