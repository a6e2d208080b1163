import { dateOfDay } from '../numeric/calendarDay.ts';
import type { MaintenancePlan, PlannedStarter } from '../survey/plan/plan.ts';
import { spareOf } from '../survey/plan/planStarters.ts';
import { asciiText } from './asciiText.ts';
import { cleanText } from './plainText.ts';
import { dayText, dominantText, isOverdue } from './planText.ts';
import { csvText } from './renderSheetCsv.ts';

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
] as const;

type Row = Partial<Record<(typeof HEAD)[number], string>>;

/**
 * The plan as RFC 4180 text: planned starters by expected date, then those that lack data. Dates are YYYY-MM-DD. A field that a
 * spreadsheet would take for a formula begins with an apostrophe.
 */
export function renderPlanCsv(plan: MaintenancePlan): string {
  const rows: Row[] = [
    ...plan.starters.map((starter) => plannedRow(starter, plan.asOf)),
    ...plan.lacking.map(({ tag, missing }) => ({ tag, state: 'not planned', missing: missing.join('; ') })),
  ];
  const lines = [HEAD, ...rows.map((row) => HEAD.map((name) => row[name] ?? ''))];
  return lines
    .map((fields) => `${fields.map((field) => csvText(asciiText(cleanText(field)))).join(',')}\r\n`)
    .join('');
}

function plannedRow(starter: PlannedStarter, asOf: number): Row {
  return {
    tag: starter.tag,
    description: starter.description ?? '',
    due: starter.partWords,
    expected: dayText(starter.expected, asOf),
    earliest: dayText(starter.earliest, asOf),
    latest: dayText(starter.latest, asOf),
    state: isOverdue(starter, asOf) ? 'overdue' : `planned as of ${dateOfDay(asOf)}`,
    used_percent: whole(100 * starter.used),
    life_operations: whole(starter.life),
    operations_per_day: String(Number(starter.operationsPerDay.toPrecision(4))),
    plugging_share_percent: whole(100 * starter.pluggingShare),
    life_from: starter.lifeOrigin,
    dominant_assumption: dominantText(starter, asOf),
    inspection: starter.inspection ?? '',
    remarks: starter.remarks.join(' '),
    spare: spareOf(starter),
  };
}

function whole(value: number): string {
  return Number.isFinite(value) ? String(Math.round(value)) : '';
}
