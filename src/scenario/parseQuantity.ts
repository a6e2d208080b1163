import { closestWord } from './closestWord.ts';
import type { Dimension } from './dimension.ts';
import { dimensions } from './dimension.ts';
import { normaliseUnit } from './normaliseUnit.ts';
import type { Fault } from './problem.ts';
import { ScenarioError } from './scenarioError.ts';
import { unitFactor } from './unitFactor.ts';

/** A number, then a unit. Written for JSON Schema too, hence without flags. */
export const quantityPattern =
  '^\\s*[+\\-\u2212]?(\\d+\\.?\\d*|\\.\\d+)([eE][+\\-]?\\d+)?\\s*[^\\s\\d.,][\\s\\S]*$';

/** Characters of the longest number with a unit worth reading. */
const LONGEST_QUANTITY = 200;

const parts = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(.*?)\s*$/su;

/**
 * Reads a number with its unit.
 *
 * A plain SI unit leaves the number as written to the last bit; a decimal prefix costs one correctly rounded
 * multiplication or division, so that `35 ms` is 0.035 s exactly as a program would read it.
 *
 * @param text such as `460 V`, `14 lb ft^2`, `1750 rpm`
 * @param dimension the quantity it must be
 * @returns the value in the SI unit of the dimension, or what is wrong with the text
 */
export function readQuantity(text: string, dimension: Dimension): number | Fault {
  const entry = dimensions[dimension];
  const example = `${entry.words} with its unit, such as \`20 ${entry.usual}\``;
  const split = splitQuantity(text, example, entry.usual);
  if ('code' in split) return split;
  const { digits, number, unitText } = split;
  if (unitText === '') {
    return {
      code: 'missingUnit',
      message: `${quoted(text)} has no unit`,
      expected: `${entry.words}: write \`${digits} ${entry.usual}\``,
    };
  }
  const unit = normaliseUnit(unitText);
  if (dimension === 'temperature')
    return celsius(number, unit) ?? wrongUnit(digits, unitText, whyNoTemperature(unit), dimension);
  if (dimension === 'temperatureDifference' && (unit === 'degC' || unit === 'degF')) {
    const kelvins = unit === 'degC' ? number : Number((number / 1.8).toPrecision(6));
    const message = `${quoted(unitText)} is a unit of a temperature, and this is a difference`;
    return { code: 'wrongUnit', message, expected: `\`${kelvins} K\`` };
  }
  const factor = unitFactor(unit, entry.si);
  if (typeof factor === 'string') return wrongUnit(digits, unitText, factor, dimension);
  return scale(number, factor);
}

/** A number and what follows it. */
export interface SplitQuantity {
  readonly digits: string;
  readonly number: number;
  /** Empty where the number stands alone. */
  readonly unitText: string;
}

/**
 * Parts a number from its unit.
 *
 * @param text as written
 * @param example what belongs there, for the message
 * @param usual the unit to name in the message
 */
export function splitQuantity(text: string, example: string, usual: string): SplitQuantity | Fault {
  const found = parts.exec(text.slice(0, LONGEST_QUANTITY).replace(/\u2212/g, '-'));
  if (found === null) {
    return { code: 'notANumber', message: `${quoted(text)} does not begin with a number`, expected: example };
  }
  const [, digits = '', unitText = ''] = found;
  if (/^[,' _]?\d/.test(unitText)) {
    return {
      code: 'notANumber',
      message: `${quoted(text)} is not one number`,
      expected: `a decimal point and no separators between thousands, then the unit, such as \`1750.5 ${usual}\``,
    };
  }
  const number = Number(digits);
  if (!Number.isFinite(number)) {
    return { code: 'notANumber', message: `${quoted(text)} is too large for a number`, expected: example };
  }
  if (text.length > LONGEST_QUANTITY) {
    return {
      code: 'wrongUnit',
      message: `${quoted(text)} is too long for a number with a unit`,
      expected: example,
    };
  }
  return { digits, number, unitText };
}

/** The one kind of quantity whose units differ in their zero; undefined where the unit is none of temperature. */
function celsius(number: number, unit: string): number | undefined {
  if (unit === 'degC') return number + 0;
  if (unit === 'K') return number - 273.15;
  return unit === 'degF' ? (number - 32) / 1.8 : undefined;
}

function whyNoTemperature(unit: string): 'unknown' | 'otherDimension' {
  return unitFactor(unit, 'ohm') === 'unknown' ? 'unknown' : 'otherDimension';
}

/**
 * Reads a number with its unit or refuses it.
 *
 * @param text such as `460 V`
 * @param dimension the quantity it must be
 * @returns the value in SI
 * @throws ScenarioError where the text is not a number with a unit of that dimension
 */
export function parseQuantity(text: string, dimension: Dimension): number {
  const read = readQuantity(text, dimension);
  if (typeof read === 'number') return read;
  throw new ScenarioError([
    { ...read, file: 'quantity', line: null, column: null, path: '', found: text.slice(0, 60) },
  ]);
}

/** A factor that is a whole number, or one over a whole number, but for rounding is applied as what it is. */
function scale(number: number, factor: number): number {
  const near = 1e-12;
  const whole = Math.round(factor);
  const parts = Math.round(1 / factor);
  // Adding zero turns −0 into 0.
  if (whole >= 1 && Math.abs(factor - whole) <= near * whole) return number * whole + 0;
  if (parts > 1 && Math.abs(1 / factor - parts) <= near * parts) return number / parts + 0;
  return number * factor + 0;
}

function wrongUnit(
  digits: string,
  unitText: string,
  why: 'unknown' | 'otherDimension',
  dimension: Dimension,
): Fault {
  const entry = dimensions[dimension];
  const unit = normaliseUnit(unitText);
  const accepted = `${entry.words} in one of ${entry.spellings.map((word) => `\`${word}\``).join(', ')}`;
  const message =
    why === 'unknown'
      ? `${quoted(unitText)} is not a unit`
      : `${quoted(unitText)} is not a unit of ${entry.words.replace(/^an? /, '')}`;
  const poundTorque = dimension === 'torque' && /\blb\b/.test(unit);
  if (poundTorque) {
    const meant = unit.replace(/\blb\b/g, 'lbf');
    return { code: 'wrongUnit', message: `${message}: lb is a mass`, expected: `\`${digits} ${meant}\`` };
  }
  if (dimension === 'acceleration' && unit === 'g')
    return { code: 'wrongUnit', message: `${message}: g is a gram`, expected: `\`${digits} g0\`` };
  const close = why === 'unknown' ? closestWord(unit, entry.spellings) : undefined;
  const hint = close === undefined ? accepted : `\`${digits} ${close}\``;
  return { code: 'wrongUnit', message, expected: hint };
}

/** The text in quotes, cut to one line's length. */
export function quoted(text: string): string {
  return JSON.stringify(text.length > 60 ? `${text.slice(0, 57)}…` : text);
}
