import type { VariedField } from '../../survey/spec/survey.ts';
import { computeExtent } from '../envelope.ts';
import type { AxisSpec, FigureSpec, LinesPanel } from '../figureSpec.ts';
import type { UnitSystem } from '../formatQuantity.ts';
import { capital } from '../judgement/judgedText.ts';
import type { BinnedField } from './binnedSpread.ts';
import { fieldUnit } from './fieldUnit.ts';
import { fieldWords } from './fieldWords.ts';
import type { ShownMetric } from './shownMetric.ts';

/** What a figure over one field shows. */
export interface SpreadFigureOptions {
  readonly units: UnitSystem;
  /** Position of the field in the survey: makes the figure's id. */
  readonly index: number;
  /** Some of the survey's metrics, each with its place in the survey. */
  readonly metrics: readonly { readonly shown: ShownMetric; readonly place: number }[];
  /** What the other fields do meanwhile. */
  readonly others: string;
}

/** Share of a span that is left free at both ends of an axis. */
const MARGIN = 0.07;

/** Median and 5 … 95 % of some metrics over one field, a panel each. */
export function spreadFigure(
  field: VariedField,
  binned: BinnedField,
  options: SpreadFigureOptions,
): FigureSpec {
  const { units, index, metrics, others } = options;
  const x = axisOfField(field, binned.at, binned.logarithmic, units);
  const names = metrics.map(({ shown }) => shown.name);
  const words = capital(fieldWords(field.path));
  return {
    id: `field-${index}-${metrics[0]?.place ?? 0}`,
    title: `${words}: how the figures follow it`,
    note: `Median and the stretch from 5 to 95 % of the runs at each value${
      binned.at.length > 1 ? ' or in each stretch of values' : ''
    }; ${others}. Right to a thousandth of the axis.`,
    description: `Lines of the median, the 5 % and the 95 % quantile of ${names.join(', ')} over ${fieldWords(field.path)}.`,
    x,
    panels: metrics.map(({ shown, place }) => panelOf(field, binned, shown, place, units)),
    marks: [],
    bands: [],
  };
}

function panelOf(
  field: VariedField,
  binned: BinnedField,
  shown: ShownMetric,
  place: number,
  units: UnitSystem,
): LinesPanel {
  const { perWritten } = fieldUnit(field.unit, units);
  const { low, median, high } = binned.metrics[place]!;
  const x = Float64Array.from(binned.at, (value) => value * perWritten);
  const scaled = (values: readonly number[]) => Float64Array.from(values, (value) => value * shown.perSi);
  const line = (label: string, values: readonly number[], dash: 'solid' | 'dash') => ({
    form: 'line' as const,
    label,
    quantity: shown.quantity,
    dash,
    x,
    y: scaled(values),
  });
  return {
    kind: 'lines',
    weight: 1.6,
    y: { label: shown.axis, domain: marginDomain(computeExtent(scaled(low), scaled(high))) },
    series: [line('95 %', high, 'dash'), line('median', median, 'solid'), line('5 %', low, 'dash')],
    references: [],
    points: [],
  };
}

/** The axis of a field that spans some of its values. */
export function axisOfField(
  field: VariedField,
  values: readonly number[],
  logarithmic: boolean,
  units: UnitSystem,
): AxisSpec {
  const { label, perWritten } = fieldUnit(field.unit, units);
  const [least, most] = computeExtent(values.map((value) => value * perWritten));
  const name = capital(fieldWords(field.path));
  const text = label === '' ? name : `${name} (${label})`;
  return logarithmic && least > 0 && most > least
    ? { label: text, domain: [least, most], scale: 'log' }
    : { label: text, domain: least < most ? [least, most] : marginDomain([least, most]) };
}

/** A domain with room at both ends, of some width where all values are the same. */
export function marginDomain([least, most]: readonly [number, number]): [number, number] {
  const span = most - least || Math.abs(most) || 1;
  return [least - MARGIN * span, most + MARGIN * span];
}
