import { type Dimension, dimensions } from '../dimension.ts';
import { normaliseUnit } from '../normaliseUnit.ts';
import { splitQuantity } from '../parseQuantity.ts';
import { unitFactor } from '../unitFactor.ts';

/** Digits that a hand can mean. */
const HAND_DIGITS = 4;

/**
 * Writes a value that a hand has chosen: four digits, in the unit in which the value stood before.
 *
 * @param value SI
 * @param before what stands there; anything that is no quantity of that dimension is passed over
 * @param unit to write in then
 */
export function writeRounded(value: number, dimension: Dimension, before: unknown, unit: string): string {
  const used = unitOf(before, dimension) ?? unit;
  const factor = unitFactor(normaliseUnit(used), dimensions[dimension].si);
  if (typeof factor === 'string') throw new Error(`${used} is not a unit of ${dimension}`);
  return `${Number((value / factor).toPrecision(HAND_DIGITS))} ${used}`;
}

function unitOf(written: unknown, dimension: Dimension): string | undefined {
  if (typeof written !== 'string') return undefined;
  const split = splitQuantity(written, '', '');
  if ('code' in split || split.unitText === '') return undefined;
  const factor = unitFactor(normaliseUnit(split.unitText), dimensions[dimension].si);
  return typeof factor === 'string' ? undefined : split.unitText;
}
