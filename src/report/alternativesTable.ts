import type { ContactWear } from '../assess/wear/contactWearTypes.ts';
import type { Alternative } from '../survey/alternatives/alternative.ts';
import { lifeRangeOf, lifeRangeText, lifeText } from './contactLives.ts';
import { displayUnit, formatNumber, type UnitSystem } from './formatQuantity.ts';
import { STOP_LABELS } from './judgementWords.ts';
import { textTable } from './textTable.ts';
import { settingText } from './waySetting.ts';

/** rad */
const TURN = 2 * Math.PI;

/**
 * The load stopped in other ways, side by side, for the terminal: lines of a table, and below it what was set for each way, what a
 * reader must know of it, and why others are not compared, a sentence each.
 *
 * @param wear of the scenario as it stands, for the range of its life; null: not known
 */
export function alternativesTable(
  alternatives: readonly Alternative[],
  wear: ContactWear | null,
  units: UnitSystem,
): { readonly table: readonly string[]; readonly notes: readonly string[] } {
  const { heads, rows } = alternativesGrid(alternatives, units);
  return {
    table: textTable([heads.map(([head]) => head), heads.map(([, unit]) => unit), ...rows]),
    notes: notesOf(alternatives, wear, units),
  };
}

/** Cells of that table: heads of two lines, and a row for each way that has figures. */
export function alternativesGrid(
  alternatives: readonly Alternative[],
  units: UnitSystem,
): { readonly heads: readonly (readonly [string, string])[]; readonly rows: readonly (readonly string[])[] } {
  const unit = (si: string) => displayUnit(si, { system: units });
  const columns: readonly Column[] = [
    { heads: ['time', unit('s').label], of: ({ figures }) => show(figures?.time, unit('s').perSi) },
    { heads: ['turns', 'rev'], of: ({ figures }) => show(figures?.angle, 1 / TURN) },
    {
      heads: ['torque', unit('N·m').label],
      of: ({ figures }) => show(figures?.peakTorque, unit('N·m').perSi),
    },
    { heads: ['current', 'A crest'], of: ({ figures }) => show(figures?.peakCurrent, 1) },
    { heads: ['rotor', unit('J').label], of: ({ figures }) => show(figures?.rotorHeat, unit('J').perSi) },
    { heads: ['contacts', 'operations'], of: ({ cost }) => lifeText(cost.contactLife) },
    { heads: ['most', 'per hour'], of: ({ cost }) => show(cost.operationsPerHour, 1) },
  ];
  const shown = alternatives.filter(({ figures }) => figures !== null);
  // The last column; digits stay under digits.
  const mark = (way: Alternative) => (isTimed(way) ? TIMED : shown.some(isTimed) ? ' ' : '');
  return {
    heads: [['Stopped by', ''], ...columns.map(({ heads }) => heads)],
    rows: shown.map((alternative) => [
      STOP_LABELS[alternative.name],
      ...columns.map(({ of }, i) => of(alternative) + (i === columns.length - 1 ? mark(alternative) : '')),
    ]),
  };
}

/** Stands after operations per hour that time limits. */
const TIMED = '*';

function isTimed({ cost }: Alternative): boolean {
  return cost.binding === 'time';
}

interface Column {
  readonly heads: readonly [string, string];
  readonly of: (alternative: Alternative) => string;
}

function show(value: number | null | undefined, perSi: number): string {
  return value === null || value === undefined ? '—' : formatNumber(value * perSi);
}

/** What the columns count, and what stands in none of them. */
function notesOf(
  alternatives: readonly Alternative[],
  wear: ContactWear | null,
  units: UnitSystem,
): string[] {
  const compared = alternatives.filter(({ missing }) => missing === null);
  const settings = compared.flatMap((way) => {
    const setting = settingText(way, units);
    if (setting === '') return [];
    return [`${STOP_LABELS[way.name]}${way.chosen === null ? ':' : ''} ${setting}`];
  });
  const missing = alternatives.flatMap(({ name, missing: why }) =>
    why === null ? [] : [`${STOP_LABELS[name]} (${why})`],
  );
  const lives = compared.flatMap((way) => {
    const range = lifeRangeOf(way, wear);
    return range === null ? [] : [`${STOP_LABELS[way.name]} ${lifeRangeText(range)} operations`];
  });
  return [
    ...(compared.some(isTimed) ? [`${TIMED} limited by time, not by heat: the cycle has no rest left.`] : []),
    ...(compared.length === 0
      ? []
      : ['Torque and current: at the closing angle of the scenario. Rotor: heat from the command to rest.']),
    ...(lives.length === 0 ? [] : [`Range of the contacts: ${lives.join('; ')}.`]),
    ...(settings.length === 0 ? [] : [`Set: ${settings.join('. ')}.`]),
    ...remarksOf(compared),
    ...(missing.length === 0 ? [] : [`Not compared: ${missing.join('; ')}.`]),
  ];
}

/** Each remark once, with the ways that it is about. */
function remarksOf(compared: readonly Alternative[]): string[] {
  const remarks = [...new Set(compared.map(({ remark }) => remark).filter((text) => text !== ''))];
  return remarks.map((text) => {
    const ways = compared.filter(({ remark }) => remark === text).map(({ name }) => STOP_LABELS[name]);
    return `Note: ${text} (${ways.length === compared.length && ways.length > 1 ? 'all ways compared' : ways.join(', ')}).`;
  });
}
