import { dateOfDay } from '../numeric/calendarDay.ts';
import type { MaintenancePlan, PlannedStarter } from '../survey/plan/plan.ts';
import { cutToWidth } from './displayWidth.ts';
import { cleanText } from './plainText.ts';
import {
  beyondText,
  dayText,
  isOverdue,
  KITS_NOTE,
  otherParts,
  type PlanDayOrigin,
  partDatesText,
  planSentences,
  quarterText,
} from './planText.ts';
import { textTable } from './textTable.ts';

/** Longest cell, columns. */
const WIDEST = 44;

/** The list of a plan for the terminal: what is due when, what lacks data, which spares are needed. */
export function renderPlanTerminal(plan: MaintenancePlan, origin: PlanDayOrigin = {}): string {
  const { starters, lacking, impossible, kits, asOf } = plan;
  const cut = (text: string) => cutToWidth(cleanText(text), WIDEST);
  const list = textTable([
    ['Starter', 'expected', 'earliest', 'latest'],
    ...starters.map((starter) => [
      cut(starter.tag),
      `${isOverdue(starter, asOf) ? 'overdue ' : ''}${dayText(starter.expected, asOf)}`,
      dayText(starter.parts[0].earliest, asOf),
      dayText(starter.parts[0].latest, asOf),
    ]),
  ]).flatMap((line, k) => {
    const starter = starters[k - 1];
    if (starter === undefined) return [`${line}  due first; hangs most on`];
    const [part] = starter.parts;
    const words = `${part.words}; ${ASSUMPTION_NAMES[part.effects[0]?.key ?? 'none']}`;
    const doubts = starter.doubts.map((doubt) => `  check: ${doubt}`);
    return [`${line}  ${words}`, ...doubts, ...othersLine(starter, asOf)];
  });
  const spares = textTable([
    ['Quarter', 'spare', 'expected', 'by the earliest date'],
    ...kits.map((kit) => [
      quarterText(kit),
      cut(kit.kit),
      String(kit.expected.length),
      String(kit.earliest.length),
    ]),
  ]);
  const missing = lacking.map(({ tag, missing: what }) => `  ${cut(tag)}: ${cleanText(what.join('; '))}`);
  const reasons = impossible.map(({ tag, reasons: why }) => `  ${cut(tag)}: ${cleanText(why.join('; '))}`);
  return [
    ...planSentences(plan, origin).map(cleanText),
    ...(starters.length === 0 ? [] : ['', ...list]),
    ...(missing.length === 0 ? [] : ['', 'Not planned, because this is missing:', ...missing]),
    ...(reasons.length === 0 ? [] : ['', 'Cannot be planned:', ...reasons]),
    ...(kits.length === 0 ? [] : ['', `Spares per quarter, as of ${dateOfDay(asOf)}`, ...spares, KITS_NOTE]),
    '',
  ].join('\n');
}

/** The parts beside the one that governs, with their own dates; no line where there are none. */
function othersLine(starter: PlannedStarter, asOf: number): string[] {
  const { shown } = otherParts(starter, asOf);
  const beyond = beyondText(starter, asOf);
  const texts = shown.map((part) => `${isOverdue(part, asOf) ? 'overdue ' : ''}${partDatesText(part, asOf)}`);
  const all = [...texts, ...(beyond === null ? [] : [beyond])];
  return all.length === 0 ? [] : [`  also: ${cleanText(all.join('; '))}`];
}

const ASSUMPTION_NAMES = {
  life: 'life of the contacts',
  pluggingShare: 'share of plugging',
  loadInertia: 'load inertia',
  operationsPerDay: 'operations per day',
  reading: 'reading of the inspection',
  none: 'nothing',
} as const;
