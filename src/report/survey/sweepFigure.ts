import type { MetricKey } from '../../measure/metric.ts';
import type { Survey } from '../../survey/spec/survey.ts';
import { figureOf, type RowSource } from '../../survey/spread/rowSource.ts';
import { computeExtent } from '../envelope.ts';
import type { FigureSpec, LinesPanel } from '../figureSpec.ts';
import type { UnitSystem } from '../formatQuantity.ts';
import { capital } from '../judgement/judgedText.ts';
import { isInRatios } from './binnedSpread.ts';
import { fieldUnit } from './fieldUnit.ts';
import { fieldWords } from './fieldWords.ts';
import type { ShownMetric } from './shownMetric.ts';
import { axisOfField, marginDomain } from './spreadFigure.ts';

/** The metrics of a sweep over one field, in the order of the field. */
export interface SweepCurve {
  /** Values of the field, in its unit, ascending. */
  readonly at: readonly number[];
  /** One list per metric of the survey, in the order of `at`: SI, NaN where the run has no value. */
  readonly metrics: readonly (readonly number[])[];
}

/** Metrics that come round. */
const ANGLES: ReadonlySet<MetricKey> = new Set(['residualAngle', 'supplyAngleAtTouch']);
/** A whole turn, rad. */
const TURN = 2 * Math.PI;
/** More runs than this are drawn as a line without marks. */
const MOST_MARKED = 40;

/**
 * The curve of a sweep over one field; null for other surveys. Memory: one number per run and metric,
 * because the curve is the answer.
 */
export function sweepCurve(survey: Survey, rows: RowSource): SweepCurve | null {
  if (survey.task.kind !== 'sweep' || survey.fields.length !== 1) return null;
  const points = Array.from(rows(), (row) => ({
    at: row.values[0]!,
    metrics: survey.metrics.map((_, m) => figureOf(row, m) ?? Number.NaN),
  })).sort((a, b) => a.at - b.at);
  return {
    at: points.map(({ at }) => at),
    metrics: survey.metrics.map((_, m) => points.map(({ metrics }) => metrics[m]!)),
  };
}

/** Some metrics over the one field of a sweep, a panel each; every run is marked where there are few. */
export function sweepFigure(
  survey: Survey,
  curve: SweepCurve,
  metrics: readonly { readonly shown: ShownMetric; readonly place: number }[],
  units: UnitSystem,
): FigureSpec {
  const field = survey.fields[0]!;
  const words = fieldWords(field.path);
  const { perWritten } = fieldUnit(field.unit, units);
  const x = Float64Array.from(curve.at, (value) => value * perWritten);
  return {
    id: `sweep-${metrics[0]?.place ?? 0}`,
    title: `What ${words} does`,
    note: `${x.length <= MOST_MARKED ? 'Each circle is a run; the lines between them are no computation.' : 'A run at each bend; the lines between them are no computation.'} A gap: a run without the figure, or an angle that has come round.`,
    description: `${metrics.map(({ shown }) => shown.name).join(', ')} over ${words}, ${curve.at.length} runs.`,
    x: axisOfField(field, curve.at, isInRatios(field.spread), units),
    panels: metrics.map(({ shown, place }): LinesPanel => {
      const y = Float64Array.from(curve.metrics[place]!, (value) => value * shown.perSi);
      const line = ANGLES.has(shown.key) ? withoutWraps(x, y, TURN * shown.perSi) : { x, y };
      const marked = x.length <= MOST_MARKED ? [...y.keys()].filter((k) => Number.isFinite(y[k]!)) : [];
      return {
        kind: 'lines',
        weight: 1.6,
        y: { label: capital(shown.axis), domain: marginDomain(computeExtent(y)) },
        series: [{ form: 'line', label: '', quantity: shown.quantity, dash: 'solid', ...line }],
        references: [],
        points: marked.map((k) => ({ x: x[k]!, y: y[k]!, label: '', quantity: shown.quantity })),
      };
    }),
    marks: [],
    bands: [],
  };
}

/** A curve with a gap wherever it steps by more than half a turn: there the angle has come round. */
function withoutWraps(
  x: Float64Array,
  y: Float64Array,
  turn: number,
): { readonly x: Float64Array; readonly y: Float64Array } {
  const points = Array.from(y, (value, k) => {
    const wraps = k > 0 && Math.abs(value - y[k - 1]!) > turn / 2;
    return [...(wraps ? [{ x: x[k]!, y: Number.NaN }] : []), { x: x[k]!, y: value }];
  }).flat();
  return {
    x: Float64Array.from(points, (point) => point.x),
    y: Float64Array.from(points, (point) => point.y),
  };
}
