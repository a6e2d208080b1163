import { dateOfDay } from '../numeric/calendarDay.ts';
import { csvText } from '../recording/csvText.ts';
import type { MaintenancePlan, PlannedStarter } from '../survey/plan/plan.ts';
import { spareOf } from '../survey/plan/planStarters.ts';
import { asciiText } from './asciiText.ts';
import { cleanText } from './plainText.ts';
import { contactsOf, dayText, dominantText, isOverdue } from './planText.ts';

/** Columns of the list. */
const HEAD = [
  'tag',
  'description',
  'due',
  'expected',
  'earliest',
  'latest',
  'state',
  'used_percent',
  'life_operations',
  'operations_per_day',
  'plugging_share_percent',
  'life_from',
  'dominant_assumption',
  'inspection',
  'remarks',
  'spare',
  'missing',
  'reason',
  'any_part_earliest',
  'contacts',
  'contacts_expected',
  'contacts_earliest',
  'contacts_latest',
  'contacts_kit',
] as const;

type Row = Partial<Record<(typeof HEAD)[number], string>>;

/**
 * The plan as RFC 4180 text: planned starters by expected date, each with the part that governs and
 * the dates of its contacts; then those that lack data, and those that cannot be planned. Dates are YYYY-MM-DD. A field that a
 * spreadsheet would take for a formula begins with an apostrophe.
 */
export function renderPlanCsv(plan: MaintenancePlan): string {
  const rows: Row[] = [
    ...plan.starters.map((starter) => plannedRow(starter, plan.asOf)),
    ...plan.lacking.map(({ tag, missing }) => ({ tag, state: 'not planned', missing: missing.join('; ') })),
    ...plan.impossible.map(({ tag, reasons }) => ({
      tag,
      state: 'cannot be planned',
      reason: reasons.join('; '),
    })),
  ];
  const lines = [HEAD, ...rows.map((row) => HEAD.map((name) => row[name] ?? ''))];
  return lines
    .map((fields) => `${fields.map((field) => csvText(asciiText(cleanText(field)))).join(',')}\r\n`)
    .join('');
}

function plannedRow(starter: PlannedStarter, asOf: number): Row {
  const [part] = starter.parts;
  const contacts = contactsOf(starter);
  return {
    tag: starter.tag,
    description: starter.description ?? '',
    due: part.words,
    expected: dayText(part.expected, asOf),
    earliest: dayText(part.earliest, asOf),
    latest: dayText(part.latest, asOf),
    state: isOverdue(starter, asOf) ? 'overdue' : `planned as of ${dateOfDay(asOf)}`,
    used_percent: whole(100 * part.used),
    life_operations: whole(part.life),
    operations_per_day: String(Number(starter.operationsPerDay.toPrecision(4))),
    plugging_share_percent: whole(100 * starter.pluggingShare),
    life_from: part.lifeOrigin,
    dominant_assumption: dominantText(part, asOf),
    inspection: starter.inspection ?? '',
    remarks: [...starter.doubts, ...starter.remarks].join(' '),
    spare: spareOf(part.part, starter.spareKit),
    any_part_earliest: dayText(starter.earliest, asOf),
    contacts: contacts.words,
    contacts_expected: dayText(contacts.expected, asOf),
    contacts_earliest: dayText(contacts.earliest, asOf),
    contacts_latest: dayText(contacts.latest, asOf),
    contacts_kit: spareOf('contacts', starter.spareKit),
  };
}

function whole(value: number): string {
  return Number.isFinite(value) ? String(Math.round(value)) : '';
}
