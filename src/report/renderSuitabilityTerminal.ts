import type { Heating } from '../assess/heat/heating.ts';
import type { VerdictOutcome } from '../assess/verdict.ts';
import { alternativesTable } from './alternativesTable.ts';
import { CAUTIONS } from './cautions.ts';
import {
  GENERIC_CURVE,
  genericLifeCautions,
  governingContactor,
  lifeRangeText,
  lifeText,
} from './contactLives.ts';
import { criteriaTable, notJudgedSentences } from './criteriaTable.ts';
import { wrapToWidth } from './displayWidth.ts';
import { extremeRows } from './extremeRows.ts';
import type { UnitSystem } from './formatQuantity.ts';
import type { JudgedRun } from './judgedRun.ts';
import { keyNumbers } from './keyNumbers.ts';
import { cleanText } from './plainText.ts';
import { type TerminalPaint, terminalPaint } from './terminalPaint.ts';
import { rowLines, type TerminalRow } from './terminalRows.ts';
import { titleLines } from './titleLines.ts';

/** How the page is written. */
export interface SuitabilityTerminalOptions {
  readonly units: UnitSystem;
  /** Bold and colour by escape sequences. */
  readonly colour: boolean;
}

/** Columns no line exceeds, and those of labels and values. */
const WIDTH = 80;
const LABEL_WIDTH = 28;
const VALUE_WIDTH = 14;

/**
 * Whether plugging suits the load, on one page of a terminal: verdict, criteria, key numbers, the load stopped otherwise, how
 * far it may go where that was asked for, what failures lead to, cautions.
 */
export function renderSuitabilityTerminal(judged: JudgedRun, options: SuitabilityTerminalOptions): string {
  const paint = terminalPaint(options.colour);
  const { units } = options;
  const { result, suitability, alternatives, extremes } = judged;
  const { verdict, criteria, consequences } = suitability;
  const wrap = (text: string) => wrapToWidth(cleanText(text), WIDTH);
  const rows = (of: readonly TerminalRow[]) =>
    rowLines(
      of.map((row) => ({ ...row, note: cleanText(row.note) })),
      LABEL_WIDTH,
      VALUE_WIDTH,
      WIDTH,
    ).map(({ head, note }) => (head + note).trimEnd());
  const ways = alternativesTable(alternatives, suitability.wear, units);
  return `${[
    ...titleLines(result.scenario).flatMap(wrap),
    ...wrap(verdict.sentence).map(markOf(verdict.outcome, paint)),
    '',
    ...criteriaTable(criteria, units, paint),
    ...notJudgedSentences(criteria).flatMap(wrap),
    '',
    ...rows([
      ...keyNumbers(result, units, judged.bands, judged.worst ?? null).map(
        ({ label, value, range, detail }) => ({
          label,
          value: range === undefined ? value : `${value} ${range}`,
          note: detail,
        }),
      ),
      ...heatRows(suitability.heating),
      ...contactRows(judged),
    ]),
    ...(alternatives.length === 0 ? [] : ['', ...ways.table, ...ways.notes.flatMap(wrap)]),
    ...(extremes === null
      ? []
      : ['', 'How far it may go, everything else as it is', ...rows(extremeRows(extremes, units))]),
    ...(consequences === null
      ? []
      : ['', 'If supply, contactor or switch fails', ...consequences.sentences.flatMap(wrap)]),
    '',
    ...genericLifeCautions(suitability).flatMap((text) => wrap(`Caution: ${text}`).map(paint.doubtful)),
    ...wrap(['Caution:', ...verdict.reservations, ...CAUTIONS].join(' ')),
  ].join('\n')}\n`;
}

function markOf(outcome: VerdictOutcome, paint: TerminalPaint): (text: string) => string {
  switch (outcome) {
    case 'suitable':
      return paint.good;
    case 'notSuitable':
      return paint.alarm;
    case 'notJudged':
      return paint.doubtful;
    default:
      return outcome satisfies never;
  }
}

/** How often the motor stands it. */
function heatRows(heating: Heating | string): TerminalRow[] {
  const label = 'Operations in succession';
  if (typeof heating === 'string') return [{ label, value: '—', note: heating }];
  const { inSuccession, dutyType } = heating;
  const times = (count: number) => (Number.isFinite(count) ? String(count) : 'no end');
  return [
    typeof inSuccession === 'string'
      ? { label, value: '—', note: inSuccession }
      : {
          label,
          value: `${times(inSuccession.warm)} from warm`,
          note: `${times(inSuccession.cold)} from cold; duty type ${dutyType.designation}`,
        },
  ];
}

/** How long the contacts last. */
function contactRows({ suitability: { wear } }: JudgedRun): TerminalRow[] {
  const label = 'Contacts to be replaced';
  if (wear === null) return [];
  const first = governingContactor(wear);
  if (first === null || first.operations === null) {
    const missing = [...new Set([...wear.forward.missing, ...wear.reverse.missing])];
    return [{ label, value: '—', note: missing[0] ?? 'nothing wears them in this duty' }];
  }
  const date = first.replacement?.value ?? null;
  const range = `${lifeRangeText(first.operations)}, ${first.contactor} contactor`;
  const generic = first.basis.generic ? `; ${GENERIC_CURVE}` : '';
  return [
    {
      label,
      value: lifeText(first.operations.value),
      note: `operations (${range})${date === null ? '' : `, on ${date}`}${generic}`,
    },
  ];
}
