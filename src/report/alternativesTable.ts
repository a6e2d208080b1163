import type { Alternative } from '../survey/alternatives/alternative.ts';
import { displayUnit, formatNumber, type UnitSystem } from './formatQuantity.ts';
import { countText } from './judgedQuantity.ts';
import { STOP_LABELS } from './judgementWords.ts';
import { textTable } from './textTable.ts';

/** rad */
const TURN = 2 * Math.PI;

/**
 * The load stopped in other ways, side by side, for the terminal: lines of a table, and below it what was set for each way and
 * why others are not compared, a sentence each.
 */
export function alternativesTable(
  alternatives: readonly Alternative[],
  units: UnitSystem,
): { readonly table: readonly string[]; readonly notes: readonly string[] } {
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
    { heads: ['contacts', 'operations'], of: ({ cost }) => countText(cost.contactLife) },
    { heads: ['most', 'per hour'], of: ({ cost }) => show(cost.operationsPerHour, 1) },
  ];
  const shown = alternatives.filter(({ figures }) => figures !== null);
  return {
    table: textTable([
      ['Stopped by', ...columns.map(({ heads }) => heads[0])],
      ['', ...columns.map(({ heads }) => heads[1])],
      ...shown.map((alternative) => [
        STOP_LABELS[alternative.name],
        ...columns.map(({ of }) => of(alternative)),
      ]),
    ]),
    notes: notesOf(alternatives),
  };
}

interface Column {
  readonly heads: readonly [string, string];
  readonly of: (alternative: Alternative) => string;
}

function show(value: number | null | undefined, perSi: number): string {
  return value === null || value === undefined ? '—' : formatNumber(value * perSi);
}

function notesOf(alternatives: readonly Alternative[]): string[] {
  const settings = alternatives.flatMap(({ name, setting, missing }) =>
    missing !== null || setting === '' ? [] : [`${STOP_LABELS[name]}: ${setting}`],
  );
  const missing = alternatives.flatMap(({ name, missing: why }) =>
    why === null ? [] : [`${STOP_LABELS[name]} (${why})`],
  );
  return [
    ...(settings.length === 0 ? [] : [`Set: ${settings.join('. ')}.`]),
    ...(missing.length === 0 ? [] : [`Not compared: ${missing.join('; ')}.`]),
  ];
}
