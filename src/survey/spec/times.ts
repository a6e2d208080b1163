import { describeValue } from '../../scenario/fault.ts';
import { normaliseUnit } from '../../scenario/normaliseUnit.ts';
import { splitQuantity } from '../../scenario/parseQuantity.ts';
import type { Fault } from '../../scenario/problem.ts';
import type { Amount } from './amountInput.ts';
import { valueText } from './valueText.ts';

/** Digits of a product: a bit fewer than a double has, so that 0.8 · 0.55 is written 0.44. */
const DIGITS = 15;

/** Units whose zero is a matter of convention: twice 20 °C means nothing. */
const ARBITRARY_ZERO: readonly string[] = ['degC', 'degF'];

/**
 * The number in the scenario of which a field takes multiples.
 *
 * @param standing what stands at the field's path; undefined where nothing does
 * @returns it with its unit, or why there are no multiples of it
 */
export function standingAmount(standing: unknown): Amount | Fault {
  const amount = typeof standing === 'number' ? { number: standing, unit: '' } : split(standing);
  const expected = 'numbers with the unit of the field';
  if (amount === null) {
    const message = `is in \`times\`, and the scenario states ${inWords(standing)} there to be multiplied`;
    return { code: 'conflict', message, expected };
  }
  const { number, unit } = amount;
  const stands = valueText(number, unit);
  if (ARBITRARY_ZERO.includes(normaliseUnit(unit))) {
    const message = `is in \`times\`, and multiples of a temperature (${stands}) mean nothing`;
    return { code: 'conflict', message, expected };
  }
  if (number === 0)
    return {
      code: 'conflict',
      message: `is in \`times\`, and every multiple of ${stands} is the same`,
      expected,
    };
  return amount;
}

/** Multiple of a number, as a person would write it. */
export function multiple(factor: number, of: number): number {
  return rounded(factor * of);
}

/** Without the last digit, in which the rounding of an operation shows. */
export function rounded(number: number): number {
  return Number(number.toPrecision(DIGITS)) + 0;
}

function split(standing: unknown): Amount | null {
  if (typeof standing !== 'string') return null;
  const found = splitQuantity(standing, '', '');
  return 'code' in found || found.unitText === '' ? null : { number: found.number + 0, unit: found.unitText };
}

function inWords(standing: unknown): string {
  return standing === undefined ? 'nothing' : `no number (${describeValue(standing)})`;
}
