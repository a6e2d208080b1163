import type { ContactWear } from '../../assess/wear/contactWearTypes.ts';
import type { RatedPoint } from '../../machine/ratedPoint.ts';
import type { Alternative } from '../../survey/alternatives/alternative.ts';
import { lifeRangeOf, lifeRangeText, lifeText } from '../contactLives.ts';
import { formatMultiple, formatNumber, formatQuantity, type UnitSystem } from '../formatQuantity.ts';
import { countOrQuantity } from '../judgedQuantity.ts';
import { STOP_LABELS } from '../judgementWords.ts';
import { paragraph } from '../markup.ts';
import { settingText } from '../waySetting.ts';
import { capital } from './judgedText.ts';
import { type LabelledCell, labelledTable } from './labelledTable.ts';
import { noteFigure } from './noteFigure.ts';
import { waysToStopFigure } from './waysToStopFigure.ts';

const HEAD = [
  'Time to rest',
  'Revolutions',
  'Peak torque',
  'Peak current',
  'Rotor heat to rest',
  'Until new contacts',
  'Per hour',
] as const;

/** rad */
const TURN = 2 * Math.PI;

/**
 * The same load stopped in every way, side by side.
 *
 * @param wear of the scenario as it stands, for the range of its life; null: not known
 */
export function alternativesSection(
  alternatives: readonly Alternative[],
  wear: ContactWear | null,
  rated: RatedPoint,
  units: UnitSystem,
): string {
  const figure = waysToStopFigure(alternatives, units);
  const body =
    alternatives.length === 0
      ? paragraph('Not compared because the run contains no stop.')
      : labelledTable({
          caption: 'The same load stopped in other ways, each simulated with its own sequence of contactors',
          head: [
            { text: 'Way to stop', width: 24 },
            ...HEAD.map((text) => ({ text, number: true as const })),
          ],
          rows: alternatives.map((way) => row(way, wear, rated, units)),
        });
  return `<section><h2>What else would stop it</h2>
${body}
${figure === null ? '' : noteFigure(figure)}
${paragraph('Time and revolutions count from the command. Peaks count from the interruption of the running current and are those of the scenario’s closing angle, rotor heat from the command until the shaft is at rest. Until new contacts, known to two digits at most: operations of the contactor whose contacts wear first, if every one were a start and this stop. Per hour: operations that the motor’s temperatures and the time allow; limited by time, not by heat: the cycle has no rest left. Contactors of a d.c. source and the lining of a brake are not judged.', 'muted')}
</section>`;
}

function row(
  way: Alternative,
  wear: ContactWear | null,
  rated: RatedPoint,
  units: UnitSystem,
): LabelledCell[] {
  const { name, figures, cost, reversalTime, missing, remark } = way;
  const note = [settingText(way, units), remark].filter((text) => text !== '').join('; ');
  const head: LabelledCell = {
    text: capital(STOP_LABELS[name]),
    ...(note === '' ? {} : { note }),
  };
  if (figures === null)
    return [head, { text: `no figures: ${missing ?? 'no reason stated'}`, span: HEAD.length }];
  const show = (value: number, unit: string) => formatQuantity(value, unit, { system: units });
  const peak = (value: number, unit: string, base: number): LabelledCell => ({
    text: value === 0 ? 'none' : show(value, unit),
    number: true,
    ...(value === 0 ? {} : { note: formatMultiple(value / base, 'rated') }),
  });
  const torque = peak(figures.peakTorque, 'N·m', rated.torque);
  const coupling =
    figures.couplingTorque === null ? {} : { note: `coupling ${show(figures.couplingTorque, 'N·m')}` };
  return [
    head,
    {
      text: figures.time === null ? 'not in its run' : show(figures.time, 's'),
      number: true,
      note: timeNote(figures.time, figures.reachesZero, reversalTime, units),
    },
    { text: figures.angle === null ? '—' : formatNumber(figures.angle / TURN), number: true },
    { ...torque, ...coupling },
    peak(figures.peakCurrent, 'A', Math.SQRT2 * rated.current),
    { text: show(figures.rotorHeat, 'J'), number: true },
    {
      text: cost.contactLife === null ? 'not judged' : lifeText(cost.contactLife),
      number: true,
      note: lifeNote(way, wear),
    },
    {
      text:
        cost.operationsPerHour === null
          ? 'not judged'
          : countOrQuantity(cost.operationsPerHour, '1/h', units),
      number: true,
      note: cost.binding === 'time' ? 'limited by time' : '',
    },
  ];
}

function lifeNote(way: Alternative, wear: ContactWear | null): string {
  const { wearsFirst } = way.cost;
  const range = lifeRangeOf(way, wear);
  return [
    ...(range === null ? [] : [lifeRangeText(range)]),
    ...(wearsFirst === null ? [] : [`${wearsFirst} contactor`]),
  ].join(', ');
}

function timeNote(
  time: number | null,
  reachesZero: boolean,
  reversalTime: number | null,
  units: UnitSystem,
): string {
  const slow = time !== null && !reachesZero ? ['to 1 % of synchronous speed'] : [];
  const back =
    reversalTime === null ? [] : [`reversed in ${formatQuantity(reversalTime, 's', { system: units })}`];
  return [...slow, ...back].join('; ');
}
