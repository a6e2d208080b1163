/**
 * Writes a number with its unit as short as it reads back to the same number.
 *
 * @param number finite
 * @param unit as a scenario reads it; empty for a plain number
 * @example
 * valueText(0.55, 'kg m^2') // '0.55 kg m^2'
 */
export function valueText(number: number, unit: string): string {
  // Adding zero turns −0 into 0. The shortest digits are those of the language's own number text (ECMAScript, Number::toString).
  const digits = String(number + 0);
  return unit === '' ? digits : `${digits} ${unit}`;
}

/**
 * What stands in a scenario's plain data for a number with its unit: text, or the number itself where it has no unit.
 *
 * @param number finite
 * @param unit as a scenario reads it; empty for a plain number
 */
export function plainValue(number: number, unit: string): string | number {
  return unit === '' ? number + 0 : valueText(number, unit);
}
