import type { MetricKey } from '../../measure/metric.ts';
import type { RowStatus, Survey, SurveyTask } from '../spec/survey.ts';
import { binOf, type Histogram } from './histogram.ts';
import { moments, type RunValue } from './moments.ts';
import { type OrderedMetric, orderedMetric, type Quantile } from './orderedMetric.ts';
import { type Reasons, reasons } from './reasons.ts';
import { figureOf, type RowSource } from './rowSource.ts';
import { type VerdictCounts, verdictCounts } from './verdictCounts.ts';

export type { Quantile } from './orderedMetric.ts';

/** What many runs came to. */
export interface SurveySummary {
  /** Number of rows. */
  readonly runs: number;
  /** Number of rows of each status. */
  readonly byStatus: Readonly<Record<RowStatus, number>>;
  readonly reasons: Reasons;
  /** In the order of the survey's metrics. */
  readonly metrics: readonly MetricSummary[];
  /** Null where the survey takes no verdict down. */
  readonly verdicts: VerdictCounts | null;
  /** What the quantiles and their intervals take as given, in words. */
  readonly note: string;
}

/** One metric over all good runs. SI. */
export interface MetricSummary {
  readonly metric: MetricKey;
  /** Good runs with a value. */
  readonly count: number;
  /** Good runs without one. */
  readonly missing: number;
  /** Null where no run has a value. */
  readonly mean: number | null;
  /** Standard deviation of the sample (divisor n − 1); null below two values. */
  readonly deviation: number | null;
  readonly smallest: RunValue | null;
  readonly largest: RunValue | null;
  /** Of QUANTILE_PERCENTS, in order; empty where no run has a value. */
  readonly quantiles: readonly Quantile[];
  /** Null where no run has a value. */
  readonly histogram: Histogram | null;
}

/**
 * Summary of a survey's rows. Quantiles are exact order statistics, found in several readings of the rows
 * (orderStatistics.ts), so that memory does not grow with their number. Four to six readings for a million rows.
 *
 * Source: intervals of the quantiles as Conover, Practical Nonparametric Statistics, section 3.2.
 *
 * @throws RangeError where a reading of the rows gave other values than the one before
 */
export function summaryOf(survey: Survey, rows: RowSource): SurveySummary {
  const byStatus: Record<RowStatus, number> = { good: 0, refused: 0, failed: 0, unbalanced: 0 };
  const why = reasons();
  const verdicts = verdictCounts();
  const taken = survey.metrics.map(moments);
  let runs = 0;
  for (const row of rows()) {
    runs++;
    byStatus[row.status]++;
    if (row.reason !== null) why.take(row.run, row.status, row.reason);
    verdicts.take(row.verdict);
    for (const [metric, taker] of taken.entries()) {
      const value = figureOf(row, metric);
      if (value !== null) taker.take(row.run, value);
    }
  }
  const drawn = survey.task.kind === 'random';
  const orders = taken.map((taker) => orderedMetric(taker.result()));
  while (orders.some(({ statistics }) => statistics?.done() === false)) {
    for (const row of rows())
      for (const [metric, { statistics }] of orders.entries()) {
        const value = figureOf(row, metric);
        if (value !== null) statistics?.take(value);
      }
    for (const { statistics } of orders) statistics?.endReading();
  }
  const histograms = histogramsOf(orders, rows);
  return {
    runs,
    byStatus,
    reasons: why.result(),
    metrics: orders.map((order, i) => ({
      metric: survey.metrics[i]!,
      missing: byStatus.good - order.moments.count,
      ...order.moments,
      quantiles: order.quantiles(drawn),
      histogram: histograms[i]!,
    })),
    verdicts: survey.verdict || survey.task.kind === 'limitMap' ? verdicts.result() : null,
    note: noteOn(survey.task),
  };
}

function histogramsOf(orders: readonly OrderedMetric[], rows: RowSource): (Histogram | null)[] {
  const histograms = orders.map((order) => {
    const edges = order.edges();
    return edges === null ? null : { edges, counts: new Array<number>(edges.length - 1).fill(0) };
  });
  for (const row of rows())
    for (const [metric, histogram] of histograms.entries()) {
      const value = figureOf(row, metric);
      if (value !== null && histogram !== null) histogram.counts[binOf(histogram.edges, value)]!++;
    }
  return histograms;
}

const INTERVALS = 'The intervals of the quantiles hold for any distribution and assume independent draws';

function noteOn(task: SurveyTask): string {
  switch (task.kind) {
    case 'random':
      return task.sequence === 'pseudo'
        ? `${INTERVALS}.`
        : `${INTERVALS}. These draws are quasi-random, which fills the ranges more evenly than chance ` +
            'does: the intervals are then as a rule on the wide side.';
    case 'sensitivity':
      return (
        'The runs are a plan for indices and no independent draws: quantiles describe these runs and have ' +
        'no intervals.'
      );
    case 'worst':
      return (
        'The runs are those of a search, drawn towards its goal: quantiles describe these runs and no ' +
        'distribution.'
      );
    case 'sweep':
    case 'limitMap':
      return (
        'The runs are the points of a grid and no draws: quantiles describe these runs and have no ' +
        'intervals.'
      );
  }
}
