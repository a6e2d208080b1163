import type { Heating } from '../../assess/heat/heating.ts';
import { NODE_WORDS } from '../../assess/heat/permissibleOperations.ts';
import type { ThermalParameter } from '../../assess/heat/thermalNetwork.ts';
import { WORD_OF_CYCLE } from '../../scenario/cycleWords.ts';
import type { CycleName } from '../../scenario/scenario.ts';
import { formatNumber, formatPercent, formatQuantity, type UnitSystem } from '../formatQuantity.ts';
import { countOrQuantity } from '../judgedQuantity.ts';
import { paragraph } from '../markup.ts';
import { capital, heatText, operationsText, sentenceOf } from './judgedText.ts';
import { type LabelledCell, labelledTable } from './labelledTable.ts';

const CYCLES: readonly CycleName[] = ['startCoast', 'startPlugStop', 'fullReversal'];

/** Rises, temperatures, permissible operations, duty type and the thermal model's parameters. */
export function heatingSection(heating: Heating | string, units: UnitSystem): string {
  const body =
    typeof heating === 'string'
      ? paragraph(`Not judged because ${heating}.`)
      : [
          temperaturesTable(heating, units),
          permissibleTable(heating, units),
          ...dutySentences(heating, units).map((text) => paragraph(text)),
          parametersTable(heating.model.parameters, units),
          paragraph(`Double cages: ${heating.cageRule}`, 'muted'),
        ].join('\n');
  return `<section><h2>Heating and duty</h2>\n${body}\n</section>`;
}

function temperaturesTable(heating: Heating, units: UnitSystem): string {
  const { model, rises, atDuty } = heating;
  const rise = (value: number): LabelledCell => ({ text: heatText(value, 'K', units), number: true });
  return labelledTable({
    caption: 'Rises of one operation if nothing cooled, and temperatures in the rhythm of the duty',
    head: [
      { text: 'Body' },
      { text: 'Start', number: true },
      { text: 'Stop', number: true },
      { text: 'Start and stop', number: true },
      { text: 'Full reversal', number: true },
      { text: 'Highest at the duty', number: true },
      { text: 'Limit', number: true },
      { text: 'Where the limit comes from' },
    ],
    rows: model.nodes.map(({ name, limit, limitSource }, i) => [
      { text: capital(NODE_WORDS[name]) },
      rise(rises.start[i]!),
      rise(rises.stop[i]!),
      rise(rises.operation[i]!),
      rise(rises.reversal[i]!),
      typeof atDuty === 'string'
        ? { text: 'not judged', number: true }
        : {
            text: heatText(atDuty.peaks[i]!, '°C', units),
            number: true,
            note: `at the end of: ${atDuty.peakPhase[i]}`,
          },
      { text: limit === null ? 'none' : heatText(limit, '°C', units), number: true },
      { text: limit === null && limitSource !== '' ? `not judged because ${limitSource}` : limitSource },
    ]),
  });
}

function permissibleTable({ permissible, model, kind }: Heating, units: UnitSystem): string {
  const head = [
    { text: 'Operation' },
    { text: 'Per hour', number: true as const },
    { text: 'What binds' },
    { text: 'Highest temperatures then' },
  ];
  const rows = CYCLES.map((cycle): LabelledCell[] => {
    const found = permissible[cycle];
    const name: LabelledCell = {
      text: capital(WORD_OF_CYCLE[cycle]),
      ...(cycle === kind ? { note: 'the duty' } : {}),
    };
    if (typeof found === 'string') return [name, { text: `not judged because ${found}`, span: 3 }];
    const temperatures = model.nodes
      .map((node, i) => `${NODE_WORDS[node.name]} ${heatText(found.peaks[i]!, '°C', units)}`)
      .join(', ');
    return [
      name,
      { text: countOrQuantity(found.perHour, '1/h', units), number: true },
      {
        text: found.binding === 'time' ? 'time: the cycle has no rest left' : NODE_WORDS[found.binding],
        note: found.remark,
      },
      { text: temperatures },
    ];
  });
  return labelledTable({
    caption:
      'Operations per hour that temperatures and time allow, evenly spaced; full reversals with running in between, the others with the running time of the duty',
    head,
    rows,
  });
}

function dutySentences(heating: Heating, units: UnitSystem): string[] {
  const { dutyType, atDuty, inSuccession, fromNoLoadStarts } = heating;
  const show = (value: number) => formatQuantity(value, 'kg·m²', { system: units });
  return [
    `Duty type of IEC 60034-1 (from memory): ${dutyType.designation} (${dutyType.words}). Factor of inertia ${formatNumber(dutyType.factorOfInertia)}: motor ${show(dutyType.motorInertia)}, what it drives ${show(dutyType.loadInertia)} at the motor’s shaft. Cyclic duration factor: ${durationFactor(heating)}.`,
    ...(typeof atDuty === 'string'
      ? [`Temperatures in the rhythm of the duty: not judged because ${atDuty}.`]
      : []),
    typeof inSuccession === 'string'
      ? `Operations in succession: not judged because ${inSuccession}.`
      : `One right after the other, without running or rest, the motor stands ${operationsText(inSuccession.cold)} operations from cold and ${operationsText(inSuccession.warm)} from the temperature of rated load.`,
    ...(fromNoLoadStarts === null
      ? []
      : typeof fromNoLoadStarts === 'string'
        ? [`By the maker’s starts without load: not judged because ${fromNoLoadStarts}.`]
        : [
            `By the maker’s starts without load: ${countOrQuantity(fromNoLoadStarts.perHour, '1/h', units)} of the duty’s operations${fromNoLoadStarts.governs ? ', fewer than by the thermal model, so they count' : ''}. ${sentenceOf(fromNoLoadStarts.rule)}`,
          ]),
  ];
}

function durationFactor({ dutyType }: Heating): string {
  if (dutyType.type === 'S7') return 'without meaning, the motor never rests';
  return dutyType.cyclicDurationFactor === null
    ? 'not judged because running time or operations per hour are missing'
    : formatPercent(dutyType.cyclicDurationFactor);
}

function parametersTable(parameters: readonly ThermalParameter[], units: UnitSystem): string {
  return labelledTable({
    caption: 'What the thermal model stands on',
    head: [
      { text: 'Parameter' },
      { text: 'Value', number: true },
      { text: 'Origin' },
      { text: 'How it was found' },
    ],
    rows: parameters.map(({ name, value, unit, origin, source }) => [
      { text: capital(name) },
      { text: formatQuantity(value, unit, { system: units }), number: true },
      { text: origin },
      { text: source },
    ]),
  });
}
