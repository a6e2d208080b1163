import type { Dimension } from '../dimension.ts';
import { dimensions } from '../dimension.ts';
import { readQuantity } from '../parseQuantity.ts';

/** A number alone. */
const alone = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/u;

/**
 * Reads what a person has typed into a field.
 *
 * @param text such as `0.08`, `0.08 kg m^2`, `12 lb ft^2`
 * @param shownUnit unit beside the field, in which a number alone is taken
 * @returns SI, or in one sentence what is wrong and what would be right
 */
export function readField(
  text: string,
  dimension: Dimension,
  shownUnit: string,
): number | { readonly message: string } {
  const typed = text
    .trim()
    .replace(/\u2212/gu, '-')
    .replace(/(?<=\d)[\u202F\u00A0](?=\d)/gu, '');
  if (typed === '') return { message: `nothing is typed; expected ${dimensions[dimension].words}` };
  const read = readQuantity(alone.test(typed) ? `${typed} ${shownUnit}` : typed, dimension);
  return typeof read === 'number' ? read : { message: `${read.message}; expected ${read.expected}` };
}
