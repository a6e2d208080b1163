import type { VariedField } from '../../survey/spec/survey.ts';
import type { Tornado, TornadoBar } from '../../survey/spread/tornado.ts';
import { computeExtent } from '../envelope.ts';
import type { UnitSystem } from '../formatQuantity.ts';
import { type Bar, type BarGroup, barRows } from './barRows.ts';
import { formatFieldValue } from './fieldUnit.ts';
import { fieldName, fieldWords } from './fieldWords.ts';
import type { ShownMetric } from './shownMetric.ts';
import { marginDomain } from './spreadFigure.ts';
import type { Drawing } from './svgSheet.ts';

/**
 * What each field does alone to a metric; null where not even the run with all fields at their medians has
 * a value.
 */
export function tornadoDrawing(
  { base, bars }: Tornado,
  fields: readonly VariedField[],
  shown: ShownMetric,
  units: UnitSystem,
): Drawing | null {
  if (base === null) return null;
  const centre = base * shown.perSi;
  const groups = bars.map((bar) => groupOf(bar, centre, fields, shown, units));
  const ends = groups.flatMap((group) => group.bars.map(({ to }) => to));
  const first = bars[0];
  const moves = first !== undefined && first.swing !== null && first.swing > 0;
  return {
    id: `tornado-${shown.key}`,
    title: moves
      ? `${shown.name}: ${fieldWords(first.field)} alone moves it most between these ends`
      : `${shown.name}: no field alone moves it`,
    note: 'One field at a time, all others at their medians. Hatched: the field at its 10 % quantile; filled: at its 90 % quantile.',
    description: bars
      .map((bar) => `${fieldWords(bar.field)}: ${shown.text(bar.atFrom)} to ${shown.text(bar.atTo)}`)
      .join('; '),
    draw: (sheet) =>
      barRows(
        {
          groups,
          axis: shown.axis,
          domain: marginDomain(computeExtent([centre], ends)),
          line: { at: centre, label: `all at their medians: ${shown.text(base)}` },
          quantity: shown.quantity === 'torque' ? 'steadyTorque' : shown.quantity,
        },
        sheet,
      ),
  };
}

function groupOf(
  bar: TornadoBar,
  centre: number,
  fields: readonly VariedField[],
  shown: ShownMetric,
  units: UnitSystem,
): BarGroup {
  const unit = fields.find(({ path }) => path === bar.field)?.unit ?? '';
  const value = (at: number | null) => (at === null ? '—' : formatFieldValue(at, unit, units));
  const end = (at: number | null, hatched: boolean): Bar[] =>
    at === null
      ? []
      : [
          {
            from: centre,
            to: at * shown.perSi,
            text: shown.text(at),
            ...(hatched ? { hatched: true as const } : {}),
          },
        ];
  const sides = [...end(bar.atFrom, true), ...end(bar.atTo, false)];
  const opposed = sides.length === 2 && (sides[0]!.to - centre) * (sides[1]!.to - centre) < 0;
  return {
    label: fieldName(bar.field),
    detail: `${value(bar.from)} … ${value(bar.to)}${bar.swing === null ? '; a run without a value' : ''}`,
    bars: sides,
    // Bars on the same side of the line would cover each other.
    ...(opposed ? { joined: true as const } : {}),
  };
}
