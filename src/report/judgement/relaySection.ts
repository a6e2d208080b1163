import type { Heating } from '../../assess/heat/heating.ts';
import type { RelayUse } from '../../assess/protection/stopsUntilTrip.ts';
import { formatNumber, formatPercent, formatQuantity, type UnitSystem } from '../formatQuantity.ts';
import { paragraph } from '../markup.ts';
import { operationsText } from './judgedText.ts';
import { type LabelledCell, labelledTable } from './labelledTable.ts';

/** I²t of an operation against what the locked rotor withstands, and what the overload relay makes of it. */
export function relaySection(heating: Heating | string, units: UnitSystem): string {
  const body =
    typeof heating === 'string'
      ? paragraph(`Not judged because ${heating}.`)
      : `${withstand(heating, units)}\n${relay(heating, units)}`;
  return `<section><h2>I²t and the overload relay</h2>\n${body}\n</section>`;
}

function withstand({ withstand: use }: Heating, units: UnitSystem): string {
  const row = (from: 'cold' | 'hot'): LabelledCell[] => {
    const share = use[from];
    const name = { text: `From ${from}` };
    if (share === null)
      return [
        name,
        { text: `not judged because the locked-rotor withstand time from ${from} is missing`, span: 3 },
      ];
    return [
      name,
      { text: formatQuantity(share.time.value, 's', { system: units }), number: true },
      { text: formatPercent(share.share), number: true },
      { text: `${share.time.origin}: ${share.time.source}` },
    ];
  };
  return `${paragraph(`One operation, start and stop, has ${formatNumber(use.I2t)} A²·s in phase ${use.phase}, where it is largest. The locked rotor takes ${formatQuantity(use.lockedRotorCurrent, 'A', { system: units })} at full voltage.`)}
${labelledTable({
  caption: 'I²t of one operation over that of the locked rotor',
  head: [
    { text: 'Motor' },
    { text: 'Locked rotor withstood', number: true },
    { text: 'Used by one operation', number: true },
    { text: 'Origin of the time' },
  ],
  rows: [row('cold'), row('hot')],
})}`;
}

function relay({ relay: use }: Heating, units: UnitSystem): string {
  if (typeof use === 'string') return paragraph(`Overload relay: not judged because ${use}.`);
  const row = (name: string, { operations, steadyPeak }: RelayUse): LabelledCell[] => [
    { text: name },
    {
      text: Number.isFinite(operations) ? operationsText(operations) : 'never trips',
      number: true,
    },
    { text: formatPercent(steadyPeak), number: true },
  ];
  const duty =
    use.atDuty === null
      ? [
          [
            { text: 'In the rhythm of the duty' },
            { text: 'not judged because that rhythm is not known', span: 2 },
          ],
        ]
      : [
          row('In the rhythm of the duty, relay cold', use.atDuty.cold),
          row('In the rhythm of the duty, relay warm', use.atDuty.warm),
        ];
  return labelledTable({
    caption: `Overload relay of class ${use.tripClass} set at ${formatQuantity(use.setting, 'A', { system: units })}`,
    head: [
      { text: 'Operations' },
      { text: 'Whole ones before it trips', number: true },
      { text: 'Heat if they go on for ever, of the trip level', number: true },
    ],
    rows: [
      row('Without running or pause, relay cold', use.withoutPause.cold),
      row('Without running or pause, relay warm', use.withoutPause.warm),
      ...duty,
    ],
  });
}
