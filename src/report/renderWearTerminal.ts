import {
  type CountRange,
  type DateRange,
  WEAR_EVENTS,
  type WearEvent,
} from '../assess/wear/contactWearTypes.ts';
import { dayOfDate } from '../numeric/calendarDay.ts';
import type { LogWear } from '../recording/wearOfLog.ts';
import type { ContactorName } from '../starter/starter.ts';
import { PLAN_HORIZON } from '../survey/plan/planStarters.ts';
import { wrapToWidth } from './displayWidth.ts';
import { cleanText } from './plainText.ts';
import { dayText } from './planText.ts';
import { daysBetween } from './renderWearJson.ts';
import { terminalPaint } from './terminalPaint.ts';
import { rowLines, type TerminalRow } from './terminalRows.ts';
import { titleLines } from './titleLines.ts';
import { CONTACTORS, WEAR_CAUTIONS, type WearReport } from './wearReport.ts';

/** Columns no line exceeds, and those of the table. */
const WIDTH = 80;
const LABEL_WIDTH = 32;
const VALUE_WIDTH = 12;

/** What a log of operations says about the contactors, for the terminal: what is used up first, then the figures. */
export function renderWearTerminal(report: WearReport, options: { readonly colour: boolean }): string {
  const paint = terminalPaint(options.colour);
  const { wear, scenario, basis, method, asOf } = report;
  const wrap = (text: string) => wrapToWidth(cleanText(text), WIDTH);
  const worn = CONTACTORS.some((name) => wear.contactors[name].left?.value === 0);
  const rows = CONTACTORS.flatMap((name) => rowsOf(name, wear.contactors[name], asOf));
  return `${[
    ...titleLines(scenario).flatMap(wrap),
    ...wrap(wearSentence(report)).map(worn ? paint.alarm : paint.strong),
    ...wrap(countsSentence(report)),
    '',
    ...rowLines(rows, LABEL_WIDTH, VALUE_WIDTH, WIDTH).map(({ head, note }) => (head + note).trimEnd()),
    '',
    ...CONTACTORS.flatMap((name) =>
      wear.contactors[name].missing.flatMap((text) => wrap(`Not judged, ${name} contactor: ${text}.`)),
    ),
    ...CONTACTORS.flatMap((name) => wrap(`Lives of the ${name} contactor: ${basis[name].origin}.`)),
    ...wear.remarks.flatMap((text) => wrap(`Note: ${text}.`)),
    ...wrap(`Method: ${method}`),
    ...wrap(`Caution: ${WEAR_CAUTIONS.join(' ')}`),
  ].join('\n')}\n`;
}

/** Which contacts are used up first, in one or two sentences. */
function wearSentence({ wear, asOf }: WearReport): string {
  const known = CONTACTORS.flatMap((name) => {
    const { used, replacement } = wear.contactors[name];
    return used === null ? [] : [{ name, used, replacement }];
  });
  const [first, second] = known.toSorted((a, b) => b.used.value - a.used.value);
  if (first === undefined) return 'The wear of the contacts is not known.';
  const { name, used, replacement } = first;
  const share = `${shareText(used.value)}, range ${rangeText(used)}`;
  const due = replacement === null ? '' : `; at this rhythm ${outcomeOf(replacement.value, asOf)}`;
  const sentence =
    used.value >= 1
      ? `The contacts of the ${name} contactor are used up by this reckoning (${share}): replace them.`
      : `The contacts of the ${name} contactor are used up most: ${share}${due}.`;
  return second === undefined ? `${sentence} The wear of the other contactor is not known.` : sentence;
}

function countsSentence({ wear, logName }: WearReport): string {
  const counted = WEAR_EVENTS.filter((event) => wear.counts[event] > 0);
  if (counted.length === 0) return `No operation in ${logName} counts.`;
  const kinds = counted.map((event) => `${wear.counts[event]} × ${EVENT_WORDS[event]}`);
  return `Counted in ${logName}, ${wear.first} to ${wear.last}: ${kinds.join(', ')}.`;
}

function rowsOf(
  name: ContactorName,
  { used, left, replacement }: LogWear,
  asOf: string | null,
): TerminalRow[] {
  const contactor = `${name.charAt(0).toUpperCase()}${name.slice(1)} contactor`;
  return [
    { label: `${contactor}: used`, ...shareRow(used) },
    { label: `${contactor}: left`, ...shareRow(left) },
    {
      label: `${contactor}: worn out`,
      value: replacement === null ? '—' : dayWords(replacement.value, asOf),
      note: replacement === null ? '' : dateNote(replacement, asOf),
    },
  ];
}

function shareRow(share: CountRange | null): Omit<TerminalRow, 'label'> {
  return share === null
    ? { value: 'not judged', note: '' }
    : { value: shareText(share.value), note: `range ${rangeText(share)}` };
}

function rangeText({ low, high }: CountRange): string {
  return low === high ? shareText(low) : `${percentText(low)} to ${shareText(high)}`;
}

/** A share in per cent. */
function shareText(share: number): string {
  return `${percentText(share)} %`;
}

/** Decimals beyond these are not known of any share. */
const MOST_DECIMALS = 6;

/** Per cent to two significant digits; near a hundred, to two of what is missing from it. */
function percentText(share: number): string {
  const percent = 100 * share;
  const small = percent > HALF ? 100 - percent : percent;
  if (small <= 0 || small >= 10) return String(Math.round(percent));
  const decimals = Math.min(MOST_DECIMALS, 1 - Math.floor(Math.log10(small)));
  return String(Number(percent.toFixed(decimals)));
}

/** Per cent of which as much is used up as is left. */
const HALF = 50;

function dateNote({ value, low, high }: DateRange, asOf: string | null): string {
  const days = daysBetween(asOf, value);
  const away = days === null || days > PLAN_HORIZON ? '' : `, ${days} ${days === 1 ? 'day' : 'days'} away`;
  const [from, to] = [dayWords(low, asOf), dayWords(high, asOf)];
  return from === to ? 'the earliest date too' : `range ${from} to ${to}${away}`;
}

/** What comes of a rhythm: the day on which nothing is left, or that the contacts last beyond all that is planned for. */
function outcomeOf(date: string | null, asOf: string | null): string {
  const words = dayWords(date, asOf);
  return words === date
    ? `nothing is left on ${words}`
    : `the contacts last ${words.replace(/^after /u, 'beyond ')}`;
}

/** A date; beyond the horizon of a plan that it is after that. */
function dayWords(date: string | null, asOf: string | null): string {
  const today = asOf === null ? null : dayOfDate(asOf);
  if (today === null) return date ?? '—';
  return dayText((date === null ? null : dayOfDate(date)) ?? Number.POSITIVE_INFINITY, today);
}

const EVENT_WORDS: Readonly<Record<WearEvent, string>> = {
  start: 'start',
  stop: 'coast',
  plugStop: 'plug stop',
  reversal: 'reversal',
  inch: 'inch',
};
