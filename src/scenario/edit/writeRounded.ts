import { type Dimension, dimensions } from '../dimension.ts';
import { normaliseUnit } from '../normaliseUnit.ts';
import { readQuantity, splitQuantity } from '../parseQuantity.ts';
import { unitFactor } from '../unitFactor.ts';

/** Digits that a hand can mean. */
const HAND_DIGITS = 4;

/** Relative; two values this near are one: far above the rounding of units, far below what a hand can mean. */
const SAME = 1e-9;

/**
 * Writes a value that a hand has chosen: four digits, in the unit in which the value stood before. A value that stands there already
 * stays as it is written, with all its digits.
 *
 * @param value SI
 * @param before what stands there; anything that is no quantity of that dimension is passed over
 * @param unit to write in then
 */
export function writeRounded(value: number, dimension: Dimension, before: unknown, unit: string): string {
  if (stands(value, dimension, before)) return before;
  const used = unitOf(before, dimension) ?? unit;
  const factor = unitFactor(normaliseUnit(used), dimensions[dimension].si);
  if (typeof factor === 'string') throw new Error(`${used} is not a unit of ${dimension}`);
  return `${Number((value / factor).toPrecision(HAND_DIGITS))} ${used}`;
}

/** True for values that differ by no more than rounding. */
export function isSame(one: number, other: number): boolean {
  return Math.abs(one - other) <= SAME * Math.max(Math.abs(one), Math.abs(other));
}

function stands(value: number, dimension: Dimension, before: unknown): before is string {
  if (unitOf(before, dimension) === undefined) return false;
  const read = readQuantity(before as string, dimension);
  return typeof read === 'number' && isSame(read, value);
}

function unitOf(written: unknown, dimension: Dimension): string | undefined {
  if (typeof written !== 'string') return undefined;
  const split = splitQuantity(written, '', '');
  if ('code' in split || split.unitText === '') return undefined;
  const factor = unitFactor(normaliseUnit(split.unitText), dimensions[dimension].si);
  return typeof factor === 'string' ? undefined : split.unitText;
}
