import { isListed, listedCount, listedValue } from '../../survey/draws/listed.ts';
import type { Survey, VariedField } from '../../survey/spec/survey.ts';
import { figureOf, type RowSource } from '../../survey/spread/rowSource.ts';
import type { SurveySummary } from '../../survey/spread/summary.ts';

/** How the metrics are spread in each stretch of one field, to the resolution of a drawing. */
export interface BinnedField {
  /** Middle of each stretch, in the unit of the field, rising. */
  readonly at: readonly number[];
  /** Drawn in ratios. */
  readonly logarithmic: boolean;
  /** In the order of the survey's metrics. */
  readonly metrics: readonly BinnedMetric[];
}

/** One metric over the stretches of a field. All in SI, one entry per stretch, NaN where a stretch has no value. */
export interface BinnedMetric {
  /** Quantile of 5 %, one entry per stretch. */
  readonly low: readonly number[];
  /** Median, one entry per stretch. */
  readonly median: readonly number[];
  /** Quantile of 95 %, one entry per stretch. */
  readonly high: readonly number[];
}

/** Stretches of a field that is no list; chosen: each still holds some ten of a few hundred runs. */
const STRETCHES = 24;
/** A longer list is drawn in stretches as well. */
const MOST_LISTED = 60;
/**
 * Classes between smallest and largest value, in which values are counted: finer than a line of a drawing
 * is wide.
 */
const CLASSES = 500;
/** Shares of the runs of a stretch below its marks. */
const SHARES = { low: 0.05, median: 0.5, high: 0.95 } as const;

/** Where the values of a field fall. */
interface Stretches {
  readonly at: readonly number[];
  readonly logarithmic: boolean;
  readonly of: (value: number) => number;
}

/**
 * Medians and 5 … 95 % of every metric over stretches of every field. Values are counted in 500 classes
 * between the smallest and the
 * largest, so that memory does not grow with the runs; the marks are right to half a class. Two readings of
 * the rows.
 */
export function binnedSpread(survey: Survey, summary: SurveySummary, rows: RowSource): BinnedField[] {
  const stretches = stretchesOf(survey.fields, rows);
  const counts = stretches.map(({ at }) => survey.metrics.map(() => at.map(() => new Uint32Array(CLASSES))));
  for (const row of rows())
    for (const [m, metric] of summary.metrics.entries()) {
      const value = figureOf(row, m);
      if (value === null) continue;
      const place = classOf(value, metric.smallest!.value, metric.largest!.value);
      for (const [f, stretch] of stretches.entries()) counts[f]![m]![stretch.of(row.values[f]!)]![place]!++;
    }
  return stretches.map(({ at, logarithmic }, f) => ({
    at,
    logarithmic,
    metrics: summary.metrics.map(({ smallest, largest }, m) => {
      const marks = (share: number) =>
        counts[f]![m]!.map((classes) => markOf(classes, share, smallest?.value ?? 0, largest?.value ?? 0));
      return { low: marks(SHARES.low), median: marks(SHARES.median), high: marks(SHARES.high) };
    }),
  }));
}

function stretchesOf(fields: readonly VariedField[], rows: RowSource): Stretches[] {
  const extents = fields.map(() => ({ least: Number.POSITIVE_INFINITY, most: Number.NEGATIVE_INFINITY }));
  for (const { values } of rows())
    for (const [k, extent] of extents.entries()) {
      extent.least = Math.min(extent.least, values[k]!);
      extent.most = Math.max(extent.most, values[k]!);
    }
  return fields.map(({ spread }, k) => {
    const { least, most } = extents[k]!;
    if (isListed(spread) && listedCount(spread) <= MOST_LISTED) {
      const list = new Set(Array.from({ length: listedCount(spread) }, (_, i) => listedValue(spread, i)));
      return listed(
        [...list].sort((a, b) => a - b),
        isInRatios(spread),
      );
    }
    return least <= most ? equalStretches(least, most, isInRatios(spread) && least > 0) : listed([0], false);
  });
}

/** Whether equal ratios of a field are worth equal lengths of an axis. */
export function isInRatios(spread: VariedField['spread']): boolean {
  return spread.kind === 'logUniform' || (spread.kind === 'grid' && spread.spacing === 'logarithmic');
}

function listed(at: readonly number[], logarithmic: boolean): Stretches {
  const places = new Map(at.map((value, place) => [value, place]));
  // Rows that were written with another list are put to the nearest value.
  const nearest = (value: number) =>
    at.reduce((best, other, k) => (Math.abs(other - value) < Math.abs(at[best]! - value) ? k : best), 0);
  return { at, logarithmic, of: (value) => places.get(value) ?? nearest(value) };
}

function equalStretches(least: number, most: number, logarithmic: boolean): Stretches {
  if (least === most) return listed([least], false);
  const to = logarithmic ? Math.log : (value: number) => value;
  const back = logarithmic ? Math.exp : (value: number) => value;
  const [from, span] = [to(least), to(most) - to(least)];
  const at = Array.from({ length: STRETCHES }, (_, k) => back(from + (span * (k + 0.5)) / STRETCHES));
  return {
    at,
    logarithmic,
    of: (value) => Math.min(STRETCHES - 1, Math.max(0, Math.floor(((to(value) - from) / span) * STRETCHES))),
  };
}

function classOf(value: number, smallest: number, largest: number): number {
  if (smallest === largest) return 0;
  return Math.min(CLASSES - 1, Math.floor(((value - smallest) / (largest - smallest)) * CLASSES));
}

/** Middle of the class that holds the value below which, with itself, a share of the counted ones lie. */
function markOf(classes: Uint32Array, share: number, smallest: number, largest: number): number {
  const total = classes.reduce((sum, count) => sum + count, 0);
  if (total === 0) return Number.NaN;
  const rank = Math.max(1, Math.ceil(total * share));
  let below = 0;
  const place = classes.findIndex((count) => {
    below += count;
    return below >= rank;
  });
  return smallest + ((largest - smallest) * (place + 0.5)) / CLASSES;
}
