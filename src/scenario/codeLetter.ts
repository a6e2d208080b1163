/** kW per horsepower, as the code letters count it. Source: 550 ft·lbf/s, see unitFactor. */
const kilowattsPerHorsepower = 0.745699872;

/**
 * Lower limit of locked-rotor kVA per horsepower of each code letter; the upper limit is the next one's lower. Source:
 * NEMA MG 1-10.37.2.
 */
const limits: readonly (readonly [string, number])[] = [
  ['A', 0],
  ['B', 3.15],
  ['C', 3.55],
  ['D', 4],
  ['E', 4.5],
  ['F', 5],
  ['G', 5.6],
  ['H', 6.3],
  ['J', 7.1],
  ['K', 8],
  ['L', 9],
  ['M', 10],
  ['N', 11.2],
  ['P', 12.5],
  ['R', 14],
  ['S', 16],
  ['T', 18],
  ['U', 20],
  ['V', 22.4],
];

/**
 * Range of locked-rotor kVA per horsepower that a code letter stands for; lower limit included, upper excluded.
 *
 * @param letter A to V without I, O, Q
 * @returns null for any other letter; the upper limit of V is infinite
 */
export function codeLetterRange(letter: string): { readonly from: number; readonly below: number } | null {
  const index = limits.findIndex(([known]) => known === letter);
  const found = limits[index];
  if (found === undefined) return null;
  return { from: found[1], below: limits[index + 1]?.[1] ?? Number.POSITIVE_INFINITY };
}

/**
 * The code letter of a locked-rotor current.
 *
 * @param kvaPerHorsepower √3·V·I over rated horsepower, kVA/hp
 */
export function codeLetterOf(kvaPerHorsepower: number): string {
  return limits.findLast(([, from]) => kvaPerHorsepower >= from)?.[0] ?? 'A';
}

/**
 * Locked-rotor kVA per horsepower.
 *
 * @param lineVoltage V between lines
 * @param current locked-rotor line current, A
 * @param power rated shaft power, W
 */
export function kvaPerHorsepower(lineVoltage: number, current: number, power: number): number {
  return (Math.sqrt(3) * lineVoltage * current * kilowattsPerHorsepower) / power;
}
