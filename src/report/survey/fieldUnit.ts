import { displayUnit, formatNumber, type UnitSystem } from '../formatQuantity.ts';

/** How the numbers of a varied field are shown: shown value = value in the survey's unit × `perWritten`. */
export interface FieldUnit {
  /** Empty for a plain number. */
  readonly label: string;
  readonly perWritten: number;
}

/** Digits in which what a person stated is given back: all that anybody states, none that arithmetic adds. */
const STATED_DIGITS = 6;

/** Units of the survey that are multiples of those with a counterpart in the other system. */
const MULTIPLES: Readonly<Record<string, readonly [unit: string, factor: number]>> = {
  kN·m: ['N·m', 1e3],
  'kN·m/rad': ['N·m/rad', 1e3],
  'g·m²': ['kg·m²', 1e-3],
  kW: ['W', 1e3],
  MW: ['W', 1e6],
  'kJ/K': ['J/K', 1e3],
  mm: ['m', 1e-3],
};

/** Spellings of the scenario and how they are printed. */
const PRINTED: Readonly<Record<string, string>> = {
  deg: '°',
  degC: '°C',
  degF: '°F',
  rpm: 'r/min',
  us: 'µs',
  uH: 'µH',
};

/**
 * A field's unit as it is printed: as the survey states it, and in the units of the United States where
 * those are asked for and the
 * survey's is an SI unit with a counterpart.
 */
export function fieldUnit(written: string, units: UnitSystem): FieldUnit {
  const label = printedUnit(written);
  const [base, factor] = MULTIPLES[label] ?? [label, 1];
  const shown = displayUnit(base, { system: units });
  const same = shown.label === displayUnit(base, { system: 'SI' }).label;
  return same ? { label, perWritten: 1 } : { label: shown.label, perWritten: factor * shown.perSi };
}

/** "0.421 kg·m²" for a value in the survey's unit. */
export function formatFieldValue(value: number, written: string, units: UnitSystem): string {
  const { label, perWritten } = fieldUnit(written, units);
  return withUnit(formatNumber(value * perWritten), label);
}

/** A number as a person would have written it: without trailing noughts, without what arithmetic added. */
export function statedNumber(value: number): string {
  return String(Number(value.toPrecision(STATED_DIGITS))).replace('-', '−');
}

/** Number and unit, with a blank where one belongs. */
export function withUnit(number: string, label: string): string {
  if (label === '') return number;
  return label === '°' ? `${number}°` : `${number} ${label}`;
}

function printedUnit(written: string): string {
  return (
    PRINTED[written] ??
    written.replaceAll('ohm', 'Ω').replaceAll('^2', '²').replaceAll('^3', '³').trim().replaceAll(/ +/gu, '·')
  );
}
