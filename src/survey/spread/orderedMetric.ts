import { binEdges } from './histogram.ts';
import type { Moments } from './moments.ts';
import { type OrderStatistics, orderStatistics } from './orderStatistics.ts';
import { quantileRanks } from './quantileRanks.ts';

/** A quantile and its interval of 95 % confidence. SI. */
export interface Quantile {
  /** Share of the runs below it, %. */
  readonly percent: number;
  /** The quantile, SI. */
  readonly value: number;
  /** Lower bound of the interval, SI; null: too few runs for a bound, or the runs are no draws. */
  readonly low: number | null;
  /** Upper bound of the interval, SI; null as `low`. */
  readonly high: number | null;
}

/** The ordered values of one metric, as far as its summary needs them. */
export interface OrderedMetric {
  readonly moments: Moments;
  /** To be fed with all values until it is done; null where there are none. */
  readonly statistics: OrderStatistics | null;
  /**
   * Of QUANTILE_PERCENTS, in order, once the statistics are done; empty where there are no values.
   *
   * @param drawn the runs are draws, so that intervals have a meaning
   */
  readonly quantiles: (drawn: boolean) => Quantile[];
  /** Edges of the histogram, once the statistics are done; null where there are no values. */
  readonly edges: () => number[] | null;
}

/** Quantiles of a summary, %. */
export const QUANTILE_PERCENTS = [1, 5, 25, 50, 75, 90, 95, 99] as const;
/** Quantiles whose distance the width of bins is chosen by, %. */
const QUARTILES = [25, 75] as const;
/** Probability beyond each bound of an interval of 95 %. */
const TAIL = 0.025;

/** @param moments number and extremes of the values, which a first reading has found */
export function orderedMetric(moments: Moments): OrderedMetric {
  const { count, smallest, largest } = moments;
  if (smallest === null || largest === null)
    return { moments, statistics: null, quantiles: () => [], edges: () => null };
  const ranks = QUANTILE_PERCENTS.map((percent) => ({ percent, ...quantileRanks(count, percent, TAIL) }));
  const wanted = ranks.flatMap(({ estimate, low, high }) => [...estimate, low, high]);
  const statistics = orderStatistics(
    smallest.value,
    largest.value,
    count,
    wanted.filter((rank) => rank !== null),
  );
  const quantiles = (drawn: boolean) =>
    ranks.map(({ percent, estimate: [lower, upper], low, high }) => ({
      percent,
      value: (statistics.valueAt(lower) + statistics.valueAt(upper)) / 2,
      low: low === null || !drawn ? null : statistics.valueAt(low),
      high: high === null || !drawn ? null : statistics.valueAt(high),
    }));
  const edges = () => {
    const found = quantiles(false);
    const [lower, upper] = QUARTILES.map((wanted) => found.find(({ percent }) => percent === wanted)!.value);
    return binEdges({
      count,
      smallest: smallest.value,
      largest: largest.value,
      quartiles: [lower!, upper!],
    });
  };
  return { moments, statistics, quantiles, edges };
}
