import type { MetricSummary } from '../../survey/spread/summary.ts';
import type { FigureSpec } from '../figureSpec.ts';
import type { ShownMetric } from './shownMetric.ts';

/** Quantiles that are marked, %, and what they are called. */
const MARKED: readonly (readonly [percent: number, name: string])[] = [
  [5, '5 %'],
  [50, 'median'],
  [95, '95 %'],
];
/** Room above the highest bar, a share of it. */
const HEADROOM = 1.08;

/**
 * How often each value of a metric came, with its quantiles of 5, 50 and 95 %; null where no run has a
 * value.
 */
export function histogramFigure(summary: MetricSummary, shown: ShownMetric): FigureSpec | null {
  const { histogram, quantiles } = summary;
  if (histogram === null) return null;
  const { edges, counts } = histogram;
  const scaled = edges.map((edge) => edge * shown.perSi);
  const highest = Math.max(...counts);
  const zeros = counts.flatMap(() => [0, 0]);
  const at = (percent: number) => quantiles.find((quantile) => quantile.percent === percent)?.value ?? null;
  return {
    id: `spread-${summary.metric}`,
    title: titleOf(summary, shown),
    note: `${summary.count} runs with a value. Each bar is as high as the number of runs in its stretch.`,
    description: `Histogram of ${shown.name} over ${summary.count} runs, from ${shown.text(summary.smallest?.value ?? null)} to ${shown.text(summary.largest?.value ?? null)}, median ${shown.text(at(50))}.`,
    x: { label: shown.axis, domain: [scaled[0]!, scaled.at(-1)!] },
    panels: [
      {
        kind: 'lines',
        weight: 1.9,
        y: { label: 'Runs', domain: [0, HEADROOM * highest] },
        series: [
          {
            form: 'envelope',
            label: '',
            quantity: shown.quantity === 'torque' ? 'steadyTorque' : shown.quantity,
            x: Float64Array.from(counts.flatMap((_, k) => [scaled[k]!, scaled[k + 1]!])),
            low: Float64Array.from(zeros),
            high: Float64Array.from(counts.flatMap((count) => [count, count])),
          },
        ],
        references: [],
        points: [],
      },
    ],
    marks: MARKED.flatMap(([percent, name]) => {
      const value = at(percent);
      return value === null ? [] : [{ x: value * shown.perSi, label: `${name} ${shown.text(value)}` }];
    }),
    bands: [],
  };
}

function titleOf({ smallest, largest, quantiles }: MetricSummary, shown: ShownMetric): string {
  if (smallest !== null && smallest.value === largest?.value)
    return `${shown.name}: ${shown.text(smallest.value)} in every run`;
  const at = (percent: number) => quantiles.find((quantile) => quantile.percent === percent)?.value ?? null;
  return `${shown.name}: nine runs of ten between ${shown.text(at(5))} and ${shown.text(at(95))}`;
}
