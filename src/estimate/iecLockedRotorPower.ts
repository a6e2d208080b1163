/**
 * Highest locked-rotor apparent power over rated power of designs N and H, [up to and including kW, kVA/kW]: IEC 60034-12,
 * from memory, medium confidence.
 */
const APPARENT_POWER: readonly (readonly [kilowatts: number, ratio: number])[] = [
  [6.3, 13],
  [25, 12],
  [100, 11],
  [1600, 10],
];

/**
 * Share by which the E variants (IEC 60034-12:2016) exceed the limits of N and H: assumed, no source. The standard allows
 * them more; its figures could not be looked up.
 */
export const E_VARIANT_FACTOR = 1.2;

/**
 * Highest locked-rotor current of IEC designs N and H.
 *
 * @param power W
 * @param lineVoltage V
 * @returns A r.m.s.; null above 1600 kW
 */
export function iecLockedRotorCurrent(power: number, lineVoltage: number): number | null {
  const row = APPARENT_POWER.find(([kilowatts]) => power / 1000 <= kilowatts);
  return row === undefined ? null : (row[1] * power) / (Math.sqrt(3) * lineVoltage);
}
