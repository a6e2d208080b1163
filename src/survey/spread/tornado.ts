import type { MetricKey } from '../../measure/metric.ts';
import { sensitivityLayout } from '../draws/sensitivityLayout.ts';
import type { Survey } from '../spec/survey.ts';
import { figureOf, type RowSource } from './rowSource.ts';

/** What each field does alone to one metric, all others at their medians. */
export interface Tornado {
  readonly metric: MetricKey;
  /** With all fields at their medians, SI; null where that run has no value. */
  readonly base: number | null;
  /** One per field, the one that moves the metric most first; those that cannot be told last. */
  readonly bars: readonly TornadoBar[];
}

/** One field's effect. */
export interface TornadoBar {
  /** Path of the field. */
  readonly field: string;
  /** The field's quantile of 10 %, in its unit; null where the row is missing. */
  readonly from: number | null;
  /** The field's quantile of 90 %, in its unit; null where the row is missing. */
  readonly to: number | null;
  /** The metric at `from`, SI; null where the run has no value. */
  readonly atFrom: number | null;
  /** The metric at `to`, SI; null where the run has no value. */
  readonly atTo: number | null;
  /**
   * Distance between the largest and smallest of base, `atFrom` and `atTo`, SI; null where one of the latter
   * two is.
   */
  readonly swing: number | null;
}

/**
 * Tornado of each metric from the first runs of a sensitivity survey, which come before its draws. Empty for
 * other surveys.
 */
export function tornadoOf(survey: Survey, rows: RowSource): Tornado[] {
  if (survey.task.kind !== 'sensitivity') return [];
  const layout = sensitivityLayout(survey.fields.length, survey.task.samples);
  const runs = layout.a(0);
  const figures = survey.metrics.map(() => new Array<number | null>(runs).fill(null));
  const values = new Array<readonly number[] | undefined>(runs);
  for (const row of rows()) {
    // Rows come in the order of their runs.
    if (row.run >= runs) break;
    values[row.run] = row.values;
    for (const [metric, list] of figures.entries()) list[row.run] = figureOf(row, metric);
  }
  return survey.metrics.map((metric, m) => {
    const at = (run: number) => figures[m]![run]!;
    const base = at(layout.median);
    const bars = survey.fields.map(({ path }, i): TornadoBar => {
      const [low, high] = [layout.low(i), layout.high(i)];
      return {
        field: path,
        from: values[low]?.[i] ?? null,
        to: values[high]?.[i] ?? null,
        atFrom: at(low),
        atTo: at(high),
        swing: swingOf(base, at(low), at(high)),
      };
    });
    return { metric, base, bars: bars.sort((a, b) => (b.swing ?? -1) - (a.swing ?? -1)) };
  });
}

function swingOf(base: number | null, atFrom: number | null, atTo: number | null): number | null {
  if (atFrom === null || atTo === null) return null;
  const all = base === null ? [atFrom, atTo] : [base, atFrom, atTo];
  return Math.max(...all) - Math.min(...all);
}
