import type {
  BreakingWear,
  ContactorWear,
  ContactWear,
  MakingOccasion,
} from '../../assess/wear/contactWearTypes.ts';
import type { MakeErosion } from '../../assess/wear/makeErosion.ts';
import { PHASE_NAMES } from '../../measure/measurement.ts';
import type { ContactorsData } from '../../scenario/scenario.ts';
import { formatNumber, formatPercent, formatQuantity, type UnitSystem } from '../formatQuantity.ts';
import { countOrQuantity, countText } from '../judgedQuantity.ts';
import { list, paragraph } from '../markup.ts';
import { capital, countRangeText, dateRangeText, sentenceOf } from './judgedText.ts';
import { type LabelledCell, labelledTable } from './labelledTable.ts';

const NAMES = ['forward', 'reverse'] as const;

/** What each contactor makes and breaks, how long its contacts last, and what else wears. */
export function wearSection(
  wear: ContactWear | null,
  contactors: ContactorsData | undefined,
  instants: string,
  units: UnitSystem,
): string {
  const body =
    wear === null
      ? paragraph(
          contactors === undefined
            ? 'Not judged because the section contactors is missing.'
            : 'Not judged because no run ended well over which contacts could be followed.',
        )
      : [
          livesTable(wear, units),
          breakingTable(wear, units),
          makingTable(wear),
          othersSentence(wear, contactors),
          paragraph(
            `${instants} Ranges stand in brackets. Contacts of all poles are changed together.`.trimStart(),
            'muted',
          ),
          ...NAMES.map((name) => notesOf(wear[name])),
        ].join('\n');
  return `<section><h2>Wear of the contacts</h2>\n${body}\n</section>`;
}

function livesTable(wear: ContactWear, units: UnitSystem): string {
  const of = (contactor: ContactorWear): LabelledCell[] => {
    const { operations, operationsLeft, replacement, worstPole, wearUnknown } = contactor;
    const unknown = wearUnknown ? 'not judged' : 'nothing wears them';
    return [
      {
        text: contactorName(contactor),
        note: [
          wear.governing === contactor.contactor ? 'to be replaced first' : '',
          contactor.basis.generic ? 'generic curve, not this device' : '',
        ]
          .filter(Boolean)
          .join('; '),
      },
      {
        text: countRangeText(operations, unknown),
        number: true,
        ...(worstPole === null
          ? {}
          : { note: `pole ${worstPole.phase} most: ${formatNumber(worstPole.factor)} × the mean` }),
      },
      { text: countRangeText(operationsLeft, 'not judged'), number: true },
      { text: dateRangeText(replacement, 'not judged'), number: true },
      {
        text: contactor.recommendedCategory ?? 'not judged',
        note:
          contactor.mostOperationsPerHour === null
            ? 'operations per hour not stated'
            : `at most ${countOrQuantity(contactor.mostOperationsPerHour, '1/h', units)}`,
      },
      {
        text:
          contactor.mechanicalOperations === null ? 'not judged' : countText(contactor.mechanicalOperations),
        number: true,
      },
    ];
  };
  return labelledTable({
    caption: 'Life of each contactor in operations of the duty',
    head: [
      { text: 'Contactor' },
      { text: 'Until new contacts', number: true },
      { text: 'Of these left', number: true },
      { text: 'Replacement', number: true },
      { text: 'Utilisation category' },
      { text: 'Mechanical life', number: true },
    ],
    rows: NAMES.map((name) => of(wear[name])),
  });
}

const OCCASIONS = {
  running: 'breaks the running motor',
  plugging: 'breaks near rest, after plugging',
  inching: 'breaks the motor at rest, inching',
} as const;

function breakingTable(wear: ContactWear, units: UnitSystem): string {
  const show = (value: number, unit: string) => formatQuantity(value, unit, { system: units });
  const row = (contactor: ContactorWear, breaking: BreakingWear): LabelledCell[] => [
    { text: capital(contactor.contactor), note: OCCASIONS[breaking.occasion] },
    { text: show(breaking.current, 'A'), number: true },
    { text: show(breaking.recoveryVoltage, 'V'), number: true },
    { text: breaking.category },
    ...PHASE_NAMES.map(
      (phase): LabelledCell => ({ text: formatNumber(breaking.arcCharges[phase]), number: true }),
    ),
    {
      text: countRangeText(
        { value: breaking.life.operations, low: breaking.life.low, high: breaking.life.high },
        '',
      ),
      number: true,
      ...(breaking.life.remark === '' ? {} : { note: breaking.life.remark }),
    },
    { text: breaking.origin },
  ];
  const rows = NAMES.flatMap((name) => wear[name].breakings.map((breaking) => row(wear[name], breaking)));
  if (rows.length === 0) return paragraph('No breaking of either contactor is known.');
  return labelledTable({
    caption: 'Breaking: current r.m.s. of equal mean arc charge, and arc charge of each pole',
    head: [
      { text: 'Contactor' },
      { text: 'Current', number: true },
      { text: 'Recovery voltage', number: true },
      { text: 'Like' },
      ...PHASE_NAMES.map((phase) => ({ text: `Pole ${phase} (C)`, number: true as const })),
      { text: 'Life if always so', number: true },
      { text: 'Origin' },
    ],
    rows,
  });
}

const MAKES: Readonly<Record<MakingOccasion, string>> = {
  start: 'makes at rest, a start',
  plugging: 'makes against the rotation',
};

function makingTable(wear: ContactWear): string {
  const row = (name: string, occasion: MakingOccasion, making: MakeErosion): LabelledCell[] => [
    { text: capital(name), note: MAKES[occasion] },
    charge(making.bounceCharge),
    charge(making.contained),
    { text: making.wear === null ? 'not judged' : shareOf(making.wear), number: true },
    { text: capital(making.remark) },
  ];
  const rows = NAMES.flatMap((name) =>
    Object.entries(wear[name].makings).map(([occasion, making]) =>
      row(name, occasion as MakingOccasion, making),
    ),
  );
  if (rows.length === 0)
    return paragraph('Make erosion: not judged because no making of either contactor is known.');
  return labelledTable({
    caption: 'Making: what bouncing costs',
    head: [
      { text: 'Contactor' },
      { text: 'Charge while bouncing', number: true },
      { text: 'Within the stated lives', number: true },
      { text: 'Wear beyond that, of one making', number: true },
      { text: 'How' },
    ],
    rows,
  });
}

function charge(value: number | null): LabelledCell {
  return { text: value === null ? 'not judged' : `${formatNumber(value)} C`, number: true };
}

function shareOf(share: number): string {
  return share === 0 ? 'none' : formatPercent(share);
}

function othersSentence(
  { interlockOperations, switchOperations }: ContactWear,
  contactors: ContactorsData | undefined,
): string {
  const life = (name: string, count: number | null, stated: number | null | undefined) =>
    count === null
      ? `${name} is not judged because ${stated == null ? 'its mechanical life is missing' : 'the duty is missing'}`
      : `${name} lasts ${countText(count)} operations of the duty`;
  return paragraph(
    `Mechanically the ${life('interlock', interlockOperations, contactors?.interlockMechanicalLife)}; the ${life('zero-speed switch', switchOperations, contactors?.switchMechanicalLife)}.`,
  );
}

/** What the figures of one contactor stand on, what a reader must know of them, and what is not judged. */
function notesOf(contactor: ContactorWear): string {
  const { basis, categoryReason, makings, missing, remarks } = contactor;
  // They stand in the table of makings.
  const told = Object.values(makings).map(({ remark }) => remark);
  const items = [
    `Lives: ${basis.origin}.`,
    sentenceOf(categoryReason),
    ...missing.map((text) => sentenceOf(`not judged: ${text}`)),
    ...remarks.filter((text) => !told.includes(text)).map(sentenceOf),
  ];
  return `<h3>${contactorName(contactor)}</h3>\n${list(items)}`;
}

function contactorName({ contactor, role }: ContactorWear): string {
  return `${capital(contactor)} contactor, ${role}`;
}
