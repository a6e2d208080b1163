import type { Extreme } from '../../survey/inverse/extreme.ts';
import type { UnitSystem } from '../formatQuantity.ts';
import { countOrQuantity } from '../judgedQuantity.ts';
import { EXTREME_LABELS } from '../judgementWords.ts';
import { paragraph } from '../markup.ts';
import { capital } from './judgedText.ts';
import { type LabelledCell, labelledTable } from './labelledTable.ts';

/** How far each quantity may be changed, everything else as it is. */
export function extremesSection(extremes: readonly Extreme[] | null, units: UnitSystem): string {
  const body =
    extremes === null
      ? paragraph('The inverse questions were not asked for this note.')
      : labelledTable({
          caption: 'Each quantity changed by itself until a criterion no longer passes',
          head: [
            { text: 'Question' },
            { text: 'As it is', number: true },
            { text: 'At the most or least', number: true },
            { text: 'What binds there' },
          ],
          rows: extremes.map((extreme) => row(extreme, units)),
        });
  return `<section><h2>How far it can go</h2>\n${body}\n</section>`;
}

function row(extreme: Extreme, units: UnitSystem): LabelledCell[] {
  const { name, unit, present, boundary, missing, remark } = extreme;
  const show = (value: number | null) => countOrQuantity(value, unit, units, unit === 's');
  const head: LabelledCell = { text: EXTREME_LABELS[name], note: remark };
  const now: LabelledCell = { text: present === null ? 'none' : show(present), number: true };
  if (boundary === null)
    return [head, now, { text: `not answered: ${missing ?? 'no reason stated'}`, span: 2 }];
  const { kind, value, beyond, binding } = boundary;
  switch (kind) {
    case 'found':
      return [head, now, { text: show(value), number: true }, { text: capital(binding.join('; ')) }];
    case 'everything':
      return [
        head,
        now,
        { text: `${show(value)} and beyond`, number: true },
        { text: 'Nothing as far as was tried' },
      ];
    case 'nothing':
      return [
        head,
        now,
        { text: 'none passes', number: true },
        { text: `At ${show(beyond)}: ${binding.join('; ')}` },
      ];
  }
}
