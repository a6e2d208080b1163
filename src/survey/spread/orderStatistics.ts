/** Bins into which one reading of the rows divides a bracket. */
const BINS = 1024;
/** A bracket of at most this many values is collected and sorted. */
const COLLECTED = 1024;

/**
 * Finds values of given ranks without keeping all values: in each reading the rows are counted into the bins
 * of the brackets in which wanted ranks lie; a bin that holds one becomes a bracket of the next reading, and
 * one with few values is collected and sorted. Exact. Memory: 1024 · 3 numbers per rank at most, whatever the
 * number of values.
 */
export interface OrderStatistics {
  /** Whether all ranks are found. */
  readonly done: () => boolean;
  /** One value of the present reading. */
  readonly take: (value: number) => void;
  /**
   * Ends a reading.
   *
   * @throws RangeError where a reading gave other values than the one before
   */
  readonly endReading: () => void;
  /** Value of a rank that was asked for, once done. */
  readonly valueAt: (rank: number) => number;
}

/** Values from `low` to `high`, both of which occur. */
interface Bracket {
  readonly low: number;
  readonly high: number;
  readonly count: number;
  /** Number of values below `low`. */
  readonly below: number;
  /** Wanted ranks that lie in here. */
  readonly ranks: readonly number[];
}

/** A bracket while rows are read. */
interface Reading {
  readonly bracket: Bracket;
  readonly take: (value: number) => void;
  /** Brackets of the next reading. */
  readonly end: (found: Map<number, number>) => Bracket[];
}

/**
 * @param low the smallest of the values
 * @param high the largest
 * @param count number of values, at least 1
 * @param ranks wanted ranks, 1 … count
 */
export function orderStatistics(
  low: number,
  high: number,
  count: number,
  ranks: Iterable<number>,
): OrderStatistics {
  const found = new Map<number, number>();
  const whole = { low, high, count, below: 0, ranks: [...new Set(ranks)].sort((a, b) => a - b) };
  let readings = begun([whole], found);
  return {
    done: () => readings.length === 0,
    take: (value) => {
      // The last bracket that begins at or below the value: brackets are in order and have gaps between them.
      let from = 0;
      let to = readings.length;
      while (from < to) {
        const middle = (from + to) >> 1;
        if (readings[middle]!.bracket.low <= value) from = middle + 1;
        else to = middle;
      }
      const reading = readings[from - 1];
      if (reading !== undefined && value <= reading.bracket.high) reading.take(value);
    },
    endReading: () => {
      readings = begun(
        readings.flatMap((reading) => reading.end(found)),
        found,
      );
    },
    valueAt: (rank) => {
      const value = found.get(rank);
      if (value === undefined)
        throw new RangeError(`the value of rank ${rank} was not asked for or not found`);
      return value;
    },
  };
}

/** Readings of the brackets that need one; where all values are the same nothing more is to be read. */
function begun(brackets: readonly Bracket[], found: Map<number, number>): Reading[] {
  return brackets.flatMap((bracket) => {
    if (bracket.ranks.length === 0) return [];
    if (bracket.low < bracket.high)
      return [bracket.count <= COLLECTED ? collecting(bracket) : counting(bracket)];
    for (const rank of bracket.ranks) found.set(rank, bracket.low);
    return [];
  });
}

function collecting(bracket: Bracket): Reading {
  const values = new Float64Array(bracket.count);
  let taken = 0;
  return {
    bracket,
    take: (value) => {
      values[taken++] = value;
    },
    end: (found) => {
      demandSame(bracket, taken);
      values.sort();
      for (const rank of bracket.ranks) found.set(rank, values[rank - bracket.below - 1]!);
      return [];
    },
  };
}

function counting(bracket: Bracket): Reading {
  const { low, high } = bracket;
  const counts = new Float64Array(BINS);
  const smallest = new Float64Array(BINS).fill(Number.POSITIVE_INFINITY);
  const largest = new Float64Array(BINS).fill(Number.NEGATIVE_INFINITY);
  return {
    bracket,
    take: (value) => {
      // Each rounding keeps the order, so that bins are in order too, and both ends fall into different ones.
      const bin = Math.min(BINS - 1, Math.floor(((value - low) / (high - low)) * BINS));
      counts[bin]!++;
      if (value < smallest[bin]!) smallest[bin] = value;
      if (value > largest[bin]!) largest[bin] = value;
    },
    end: () => {
      let below = bracket.below;
      const next: Bracket[] = [];
      for (let bin = 0; bin < BINS; bin++) {
        const count = counts[bin]!;
        const from = below;
        const ranks = bracket.ranks.filter((rank) => rank > from && rank <= from + count);
        if (ranks.length > 0) next.push({ low: smallest[bin]!, high: largest[bin]!, count, below, ranks });
        below += count;
      }
      demandSame(bracket, below - bracket.below);
      return next;
    },
  };
}

function demandSame(bracket: Bracket, taken: number): void {
  if (taken !== bracket.count)
    throw new RangeError(
      `the rows changed between two readings: ${bracket.count} values from ${bracket.low} to ` +
        `${bracket.high} before, now ${taken}`,
    );
}
