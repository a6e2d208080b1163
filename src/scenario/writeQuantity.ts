/**
 * Writes a value for a file: all digits a number needs to come back the same, and the unit.
 *
 * @param value in the unit
 * @param unit in a spelling the parser reads
 */
export function writeQuantity(value: number, unit: string): string {
  return `${value} ${unit}`;
}
