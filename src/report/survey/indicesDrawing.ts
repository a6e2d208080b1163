import type { MetricSensitivity, SensitivityIndex } from '../../survey/spread/sensitivity.ts';
import { type Bar, barRows } from './barRows.ts';
import { fieldName, fieldWords } from './fieldWords.ts';
import { indexText, percentText } from './percentText.ts';
import { leadWords } from './sensitivityWords.ts';
import type { ShownMetric } from './shownMetric.ts';
import type { Drawing } from './svgSheet.ts';

/**
 * First-order and total indices of all fields for a metric, with their intervals; null where there are
 * none.
 */
export function indicesDrawing(sensitivity: MetricSensitivity, shown: ShownMetric): Drawing | null {
  if (sensitivity.reason !== null) return null;
  const ranked = sensitivity.fields.toSorted((a, b) => (b.total?.value ?? 0) - (a.total?.value ?? 0));
  const ends = ranked.flatMap(({ first, total }) =>
    [first, total].flatMap((index) => (index === null ? [] : [index.value, index.low, index.high])),
  );
  return {
    id: `indices-${shown.key}`,
    title: `${shown.name}: ${leadWords(sensitivity.fields)}`,
    note: 'Filled: first-order index, the share of the variance that would go if the field were fixed. Hatched: total index, which counts what the field does together with others too. Whiskers: intervals of 95 %.',
    description: ranked
      .map(
        ({ field, first, total }) =>
          `${fieldWords(field)}: first ${indexText(first)}, total ${indexText(total)}`,
      )
      .join('; '),
    draw: (sheet) =>
      barRows(
        {
          groups: ranked.map(({ field, first, total }) => ({
            label: fieldName(field),
            detail: '',
            bars: [...barOf(first, false), ...barOf(total, true)],
          })),
          axis: 'Share of the variance (%)',
          domain: [
            Math.min(0, ...ends.map((end) => 100 * end)),
            Math.max(100, ...ends.map((end) => 100 * end)),
          ],
          line: null,
          quantity: shown.quantity === 'torque' ? 'steadyTorque' : shown.quantity,
        },
        sheet,
      ),
  };
}

function barOf(index: SensitivityIndex | null, hatched: boolean): Bar[] {
  if (index === null) return [];
  return [
    {
      from: 0,
      to: 100 * index.value,
      text: percentText(index.value),
      whisker: [100 * index.low, 100 * index.high],
      ...(hatched ? { hatched: true as const } : {}),
    },
  ];
}
