import { dateOfDay, yearOfDay } from '../numeric/calendarDay.ts';
import { TABLE_YEARS } from '../recording/tableYears.ts';
import type { KitDemand, MaintenancePlan, PlannedPart, PlannedStarter } from '../survey/plan/plan.ts';
import { PLAN_HORIZON } from '../survey/plan/planStarters.ts';
import { COUNTER_DISAGREES, READING_ERROR } from '../survey/plan/uncertainty.ts';
import { CAUTIONS } from './cautions.ts';

/** Day of a plan as a date; beyond the horizon it is "after" its last day, ahead of all dates of tables "before" these. */
export function dayText(day: number, asOf: number): string {
  const last = asOf + PLAN_HORIZON;
  // A counter far beyond a life would give a year that no date can be written with.
  if (yearOfDay(Math.floor(day)) < TABLE_YEARS.first) return `before ${TABLE_YEARS.first}-01-01`;
  return day > last ? `after ${dateOfDay(last)}` : dateOfDay(Math.floor(day));
}

/** True where the expected day is over. */
export function isOverdue({ expected }: Pick<PlannedPart, 'expected'>, asOf: number): boolean {
  return Math.floor(expected) < asOf;
}

/** Where the day of a plan comes from. */
export interface PlanDayOrigin {
  /** Nobody stated the day of the plan: it is the latest date in the table; left out: it was stated. */
  readonly latestInTable?: boolean;
}

/** What came of the table, in sentences. */
export function planSentences(
  plan: MaintenancePlan,
  { latestInTable = false }: PlanDayOrigin,
): readonly string[] {
  const { starters, lacking, impossible, asOf } = plan;
  const overdue = starters.filter((starter) => isOverdue(starter, asOf));
  const doubtful = starters.filter(
    (starter) => !isOverdue(starter, asOf) && Math.floor(starter.earliest) < asOf,
  );
  // A part other than the one that governs may be the one whose range begins early.
  const early = ({ tag, parts }: PlannedStarter) =>
    `${tag} (${parts
      .filter(({ earliest }) => Math.floor(earliest) < asOf)
      .map(({ words }) => words)
      .join(', ')})`;
  const doubted = starters.filter(({ doubts }) => doubts.length > 0).map(({ tag }) => tag);
  const [first] = starters;
  return [
    `${counted(starters.length, 'starter')} planned as of ${dateOfDay(asOf)}${lacking.length === 0 ? '' : `; ${lacking.length} not planned for lack of data: ${lacking.map(({ tag }) => tag).join(', ')}`}${impossible.length === 0 ? '' : `; ${impossible.length} cannot be planned: ${impossible.map(({ tag }) => tag).join(', ')}`}.`,
    ...(latestInTable
      ? [
          `${dateOfDay(asOf)} is the latest date in the table and may be old: give --as-of YYYY-MM-DD for today.`,
        ]
      : []),
    ...(first === undefined
      ? []
      : [`Due first: ${first.tag}, ${partDatesText(first.parts[0], asOf, ', ')}.`]),
    ...(doubtful.length === 0
      ? []
      : [
          `May be due already, because the range begins before ${dateOfDay(asOf)}: ${doubtful.map(early).join('; ')}.`,
        ]),
    ...(overdue.length === 0
      ? []
      : [`Overdue: ${overdue.map(({ tag }) => tag).join(', ')}. Inspect these first.`]),
    ...(doubted.length === 0
      ? []
      : [
          `Counter and operations per day disagree by more than a factor of ${COUNTER_DISAGREES}: ${doubted.join(', ')}. ${doubted.length === 1 ? 'Its dates stand' : 'Their dates stand'} on both: check them first.`,
        ]),
  ];
}

/** "2026-02-01 to 2027-05-09". */
export function rangeText({ earliest, latest }: { earliest: number; latest: number }, asOf: number): string {
  const [from, to] = [dayText(earliest, asOf), dayText(latest, asOf)];
  return from === to ? from : `${from} to ${to}`;
}

/** "contacts of the reversing contactor 2028-09-27 (2027-02-21 to 2034-07-23)". */
export function partDatesText(part: PlannedPart, asOf: number, between = ' '): string {
  const [day, range] = [dayText(part.expected, asOf), rangeText(part, asOf)];
  return `${part.words}${between}${day}${range === day ? '' : ` (${range})`}`;
}

/** The contacts among the parts. */
export function contactsOf({ parts }: PlannedStarter): PlannedPart {
  return parts.find(({ part }) => part === 'contacts') ?? parts[0];
}

/** Parts beside the one that governs: the contacts, and what may be due within the horizon; and those certain to last longer. */
export function otherParts(
  { parts }: PlannedStarter,
  asOf: number,
): { readonly shown: readonly PlannedPart[]; readonly beyond: readonly PlannedPart[] } {
  const [, ...others] = parts;
  const isShown = ({ part, earliest }: PlannedPart) => part === 'contacts' || earliest <= asOf + PLAN_HORIZON;
  return { shown: others.filter(isShown), beyond: others.filter((part) => !isShown(part)) };
}

/** "after 2056-05-01: contactor (mechanical life)"; null where all is shown. */
export function beyondText(starter: PlannedStarter, asOf: number): string | null {
  const { beyond } = otherParts(starter, asOf);
  if (beyond.length === 0) return null;
  return `${dayText(Number.POSITIVE_INFINITY, asOf)}: ${beyond.map(({ words }) => words).join(', ')}`;
}

/** The assumption that moves the date of a part most, and how far; in words. */
export function dominantText({ effects }: PlannedPart, asOf: number): string {
  const [first] = effects;
  return first === undefined ? 'none' : `${first.words}: ${rangeText(first, asOf)}`;
}

/** "2026 Q3". */
export function quarterText({ year, quarter }: Pick<KitDemand, 'year' | 'quarter'>): string {
  return `${year} Q${quarter}`;
}

/** Operations, rounded to what is known of them: two digits. */
export function operationsText(count: number): string {
  if (!Number.isFinite(count)) return 'no wear';
  const rounded = count >= 100 ? Number(count.toPrecision(2)) : Math.round(count);
  return String(rounded).replace(/\B(?=(\d{3})+$)/gu, '\u202F');
}

/** A share as whole percent. */
export function shareText(share: number): string {
  return `${Math.round(100 * share)} %`;
}

/** What must be read before the list is acted on. */
export const PLAN_CAUTIONS: readonly string[] = [
  'A date is an estimate, not a permission to wait: inspect contacts in the maker’s intervals and after every short circuit.',
  'Change contacts of all poles together, with the supply locked off and proved dead.',
  'Contacts at the end of their life weld. A contactor that does not open leaves the motor plugging or running.',
  ...CAUTIONS,
];

/** How the dates are found. */
export const PLAN_METHOD: readonly string[] = [
  'Each motor’s circuit is estimated from its nameplate; what the nameplate leaves open is taken from the standards’ tables or typical values. The stop is simulated from steady running at four instants of opening, pole by pole; the mean arc charge and the recovery voltage of each contactor give the wear of one operation from the lives stated, or from a generic curve. Inching is estimated from the current of the motor at rest. Operations of different kinds add up by linear damage (Miner’s rule).',
  'The expected day is the day on which the worn share reaches one at the stated operations per day (or the counter’s). Contacts, contactor, interlock and zero-speed switch are counted by themselves; the one due first governs, and stands with its own dates.',
  `An inspection takes the place of the computed wear on its day. Where at least a tenth of the wear allowance is used up and the operations before it are known, the rate of wear is scaled by measured over computed from then on. A reading is taken to be within ${Math.round(100 * READING_ERROR)} % of the wear allowance, and to be that of the contactor whose contacts are worn more.`,
  'Earliest and latest of a part: every assumption at the end that is unfavourable, and at the one that is favourable to this part, at once. The assumption named is the one that by itself moves the expected day of this part most. Not varied: the locked-rotor current where it is not stated, and the drop-out speed of the zero-speed switch (4 % of synchronous speed, assumed).',
  'The ranges of life, shares, operations per day, load inertia and readings are common practice, without a source. Make erosion beyond what the makers’ tests contain is not counted: the bounce time is not stated in the table.',
];

/** What the table of spares says and what it does not. */
export const KITS_NOTE =
  'The first replacement of each part of each starter only; a new contactor brings contacts of its own. What is overdue stands in the present quarter. “By the earliest date” is what must be in store if everything turns out badly.';

function counted(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? '' : 's'}`;
}
