import type { Estimation, NameplateItem } from '../scenario/nameplate.ts';
import { asciiText } from './asciiText.ts';
import { circuitRows } from './circuitRows.ts';
import { displayWidth, wrapToWidth } from './displayWidth.ts';
import { ESTIMATED_FROM, formatItem, LIMIT_WORDS } from './estimationText.ts';
import {
  displayUnit,
  formatDeviation,
  formatNumber,
  formatQuantity,
  type UnitSystem,
} from './formatQuantity.ts';
import { type MotorSheet, POINT_NAMES } from './motorSheet.ts';
import { cleanText } from './plainText.ts';
import { RATED_WORDS } from './ratedWords.ts';
import { rowLines, type TerminalRow } from './terminalRows.ts';
import { textTable } from './textTable.ts';

/** How the sheet of a motor is written in the terminal. */
export interface MotorTerminalOptions {
  readonly units: UnitSystem;
  /** Columns no line of text exceeds; 80 by default. */
  readonly width?: number;
  /** Bold by escape sequences. */
  readonly colour: boolean;
  /** Plain ASCII characters only. */
  readonly ascii?: boolean;
}

const CIRCUIT_LABEL = 28;
/** Widest label of an item, columns; longer ones are cut. */
const MOST_ITEM_LABEL = 40;
const VALUE = 12;

/** The motor by itself: its circuit, the points of its steady state, and the nameplate beside what the circuit gives. */
export function renderMotorTerminal(sheet: MotorSheet, options: MotorTerminalOptions): string {
  const width = options.width ?? 80;
  const strong = (text: string) => (options.colour ? `\u001B[1m${text}\u001B[0m` : text);
  const wrap = (text: string) => wrapToWidth(text, width);
  const heading = (text: string) => wrap(text).map(strong);
  const cell = (text: string) => (options.ascii === true ? asciiText(text) : text);
  const rows = (list: readonly TerminalRow[], label: number) =>
    rowLines(
      list.map((row) => ({ label: cell(row.label), value: cell(row.value), note: cell(row.note) })),
      label,
      VALUE,
      width,
    ).map((line) => (line.head + line.note).trimEnd());
  const supply = `${formatNumber(sheet.lineVoltage)} V, ${formatNumber(sheet.frequency)} Hz`;
  const lines = [
    ...heading(cleanText(sheet.title)),
    '',
    ...heading(
      `Circuit per phase: equivalent star, rotor referred to the stator, reactances at ${formatNumber(sheet.frequency)} Hz`,
    ),
    ...rows(
      // Words in the column of numbers would push them to lines of their own.
      circuitRows(sheet.machine, sheet.frequency).map(({ label, value }) =>
        value.length > VALUE ? { label, value: '', note: value } : { label, value, note: '' },
      ),
      CIRCUIT_LABEL,
    ),
    '',
    ...heading(`Steady state at ${supply}, forward phase sequence`),
    ...pointTable(sheet, options.units),
    ...wrap(ratedLine(sheet, options.units)),
    ...(sheet.estimation === null
      ? []
      : ['', ...estimationPart(sheet.estimation, heading, rows, wrap, options)]),
    '',
    ...wrap(
      'Currents are r.m.s. values, torques those at the air gap, both in the steady state: in the first cycles after a switching, and after plugging above all, they swing far beyond.',
    ),
  ];
  const text = `${lines.join('\n')}\n`;
  return options.ascii === true ? asciiText(text) : text;
}

function pointTable(sheet: MotorSheet, units: UnitSystem): string[] {
  const torque = displayUnit('N·m', { system: units });
  const speed = displayUnit('rad/s', { system: units });
  return textTable([
    ['', 'speed', 'slip', 'torque', '× rated', 'current', '× rated', 'power'],
    ['', speed.label, '', torque.label, '', 'A', '', 'factor'],
    ...sheet.points.map((point) => [
      POINT_NAMES[point.kind],
      formatNumber(point.speed * speed.perSi),
      point.slip.toFixed(4),
      formatNumber(point.torque * torque.perSi),
      formatNumber(point.torque / sheet.rated.torque),
      formatNumber(point.current),
      formatNumber(point.current / sheet.rated.current),
      formatNumber(point.powerFactor),
    ]),
  ]);
}

function ratedLine({ rated }: MotorSheet, units: UnitSystem): string {
  const show = (value: number, unit: string) => formatQuantity(value, unit, { system: units });
  return (
    `Rated: ${show(rated.current, 'A')} (${RATED_WORDS[rated.currentOrigin]}), ` +
    `${show(rated.torque, 'N·m')} (${RATED_WORDS[rated.torqueOrigin]}).`
  );
}

function estimationPart(
  estimation: Estimation,
  heading: (text: string) => string[],
  rows: (list: readonly TerminalRow[], label: number) => string[],
  wrap: (text: string) => string[],
  { units }: MotorTerminalOptions,
): string[] {
  const source = ESTIMATED_FROM[estimation.from];
  return [
    ...heading(`What the estimated circuit gives, beside the ${source}`),
    ...rows(
      estimation.items.map((item) => ({
        label: cleanText(item.name),
        value: formatItem(item, item.reproduced, units),
        note: aimWords(item, units),
      })),
      Math.min(MOST_ITEM_LABEL, 2 + Math.max(0, ...estimation.items.map((item) => displayWidth(item.name)))),
    ),
    ...estimation.remarks.flatMap((remark) => wrap(`Note: ${cleanText(remark)}`)),
  ];
}

function aimWords(item: NameplateItem, units: UnitSystem): string {
  const source = cleanText(item.source);
  if (item.target === null) return 'nothing stated, nothing in a table';
  const deviation = item.kind !== 'value' && item.error === null ? 'kept' : formatDeviation(item.error);
  return `for ${LIMIT_WORDS[item.kind]}${formatItem(item, item.target, units)} (${source}): ${deviation}`;
}
