import { DEFINITIONS } from '../../measure/definitions.ts';
import type { MetricKey } from '../../measure/metric.ts';
import { formatMetric } from '../formatMetric.ts';
import { displayUnit, type UnitSystem } from '../formatQuantity.ts';
import { METRIC_GROUPS, type MetricLabel } from '../metricLabels.ts';
import type { Quantity } from '../palette.ts';

/** How a metric stands in tables and figures of a survey. */
export interface ShownMetric {
  readonly key: MetricKey;
  /** "Most negative air-gap torque, plugging" */
  readonly name: string;
  /** "Most negative air-gap torque, plugging (N·m)" */
  readonly axis: string;
  /** What is measured, in words. */
  readonly definition: string;
  /** Value on an axis = SI value × `perSi`. */
  readonly perSi: number;
  /** SI value with its unit; null is a dash. */
  readonly text: (value: number | null) => string;
  /** SI difference with its unit: without the word behind it ("crest") that belongs to values. */
  readonly difference: (value: number) => string;
  /** Colour of the figures. */
  readonly quantity: Quantity;
}

/** Groups whose labels stand in another group too. */
const GROUP_WORDS: Readonly<Record<string, string>> = {
  Starting: 'starting',
  Plugging: 'plugging',
  'Poles of the contactor that ran': 'contactor that ran',
  'Poles of the contactor that plugged': 'contactor that plugged',
};

const COLOURS: Readonly<Record<string, Quantity>> = {
  A: 'currentA',
  'A²·s': 'currentA',
  C: 'currentA',
  N·m: 'torque',
  V: 'voltage',
  J: 'heat',
  'rad/s': 'speed',
  s: 'contacts',
};

/** The metric with a key, as it is shown in a system of units. */
export function shownMetric(key: MetricKey, units: UnitSystem): ShownMetric {
  const group = METRIC_GROUPS.find(({ rows }) => rows.some((row) => row.key === key))!;
  const label: MetricLabel = group.rows.find((row) => row.key === key)!;
  const { unit, definition } = DEFINITIONS[key];
  const of = GROUP_WORDS[group.title];
  const name = of === undefined ? label.label : `${label.label}, ${of}`;
  const shown =
    label.percent === true
      ? { label: '%', perSi: 100 }
      : displayUnit(unit, { system: units, milli: label.milli === true });
  const { suffix: _, ...bare } = label;
  const axisUnit = [shown.label, label.suffix ?? ''].filter((part) => part !== '').join(' ');
  return {
    key,
    name,
    axis: axisUnit === '' ? name : `${name} (${axisUnit})`,
    definition,
    perSi: shown.perSi,
    text: (value) => formatMetric({ value, unit, definition }, label, units),
    difference: (value) => formatMetric({ value, unit, definition }, bare, units),
    quantity: COLOURS[unit] ?? 'electrical',
  };
}
