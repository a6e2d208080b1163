import type { VariedField } from '../../survey/spec/survey.ts';
import { computeExtent } from '../envelope.ts';
import type { AxisSpec, FigureSpec, LinesPanel } from '../figureSpec.ts';
import type { UnitSystem } from '../formatQuantity.ts';
import type { BinnedField } from './binnedSpread.ts';
import { fieldUnit } from './fieldUnit.ts';
import { fieldName, fieldWords } from './fieldWords.ts';
import type { ShownMetric } from './shownMetric.ts';

/** What a figure over one field shows. */
export interface SpreadFigureOptions {
  readonly units: UnitSystem;
  /** Position of the field in the survey: makes the figure's id. */
  readonly index: number;
  readonly shown: ShownMetric;
  /** Place of the metric in the survey. */
  readonly place: number;
}

/** Share of a span that is left free at both ends of an axis. */
const MARGIN = 0.07;

/** Median and 5 … 95 % of a metric over one field: one of several small figures that are explained together. */
export function spreadFigure(
  field: VariedField,
  binned: BinnedField,
  options: SpreadFigureOptions,
): FigureSpec {
  const { units, index, shown, place } = options;
  return {
    id: `field-${index}-${place}`,
    title: fieldName(field.path),
    note: '',
    description: `Lines of the median, the 5 % and the 95 % quantile of ${shown.name} over ${fieldWords(field.path)}.`,
    x: axisOfField(field, binned.at, binned.logarithmic, units),
    panels: [panelOf(field, binned, shown, place, units)],
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
    weight: 1.4,
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
  const name = fieldName(field.path);
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
