import { dateOfDay } from '../numeric/calendarDay.ts';
import type { MaintenancePlan } from '../survey/plan/plan.ts';
import { cutToWidth } from './displayWidth.ts';
import { cleanText } from './plainText.ts';
import { dayText, isOverdue, KITS_NOTE, planSentences, quarterText } from './planText.ts';
import { textTable } from './textTable.ts';

/** Longest cell, columns. */
const WIDEST = 44;

/** The list of a plan for the terminal: what is due when, what lacks data, which spares are needed. */
export function renderPlanTerminal(plan: MaintenancePlan): string {
  const { starters, lacking, kits, asOf } = plan;
  const cut = (text: string) => cutToWidth(cleanText(text), WIDEST);
  const list = textTable([
    ['Starter', 'expected', 'earliest', 'latest'],
    ...starters.map((starter) => [
      cut(starter.tag),
      `${isOverdue(starter, asOf) ? 'overdue ' : ''}${dayText(starter.expected, asOf)}`,
      dayText(starter.earliest, asOf),
      dayText(starter.latest, asOf),
    ]),
  ]).map((line, k) => {
    const starter = starters[k - 1];
    const words =
      starter === undefined
        ? 'due first; hangs most on'
        : `${starter.partWords}; ${ASSUMPTION_NAMES[starter.effects[0]?.key ?? 'none']}`;
    return `${line}  ${words}`;
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
  return [
    ...planSentences(plan).map(cleanText),
    ...(starters.length === 0 ? [] : ['', ...list]),
    ...(missing.length === 0 ? [] : ['', 'Not planned, because this is missing:', ...missing]),
    ...(kits.length === 0 ? [] : ['', `Spares per quarter, as of ${dateOfDay(asOf)}`, ...spares, KITS_NOTE]),
    '',
  ].join('\n');
}

const ASSUMPTION_NAMES = {
  life: 'life of the contacts',
  pluggingShare: 'share of plugging',
  loadInertia: 'load inertia',
  operationsPerDay: 'operations per day',
  reading: 'reading of the inspection',
  none: 'nothing',
} as const;
