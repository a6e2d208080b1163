import { HORSEPOWER } from './units.ts';

/** Line voltage to which the table refers, V. */
const TABLE_VOLTAGE = 230;

/**
 * Highest locked-rotor current of designs B, C and D at 230 V and 60 Hz, [hp, A]: NEMA MG 1, 12.35.1 (looked up on a page
 * of a repairers' handbook).
 */
export const LOCKED_ROTOR_AMPERES: readonly (readonly [hp: number, amperes: number])[] = [
  [0.5, 20],
  [0.75, 25],
  [1, 30],
  [1.5, 40],
  [2, 50],
  [3, 64],
  [5, 92],
  [7.5, 127],
  [10, 162],
  [15, 232],
  [20, 290],
  [25, 365],
  [30, 435],
  [40, 580],
  [50, 725],
  [60, 870],
  [75, 1085],
  [100, 1450],
  [125, 1815],
  [150, 2170],
  [200, 2900],
  [250, 3650],
  [300, 4400],
  [350, 5100],
  [400, 5800],
  [450, 6500],
  [500, 7250],
];

/**
 * Highest locked-rotor current of NEMA designs B, C and D, inversely proportional to the voltage as the standard says.
 * Between two ratings of the table, which knows no others, a straight line.
 *
 * @param power W
 * @param lineVoltage V
 * @returns A r.m.s.; null outside ½ to 500 hp
 */
export function nemaLockedRotorCurrent(power: number, lineVoltage: number): number | null {
  const hp = power / HORSEPOWER;
  const at = LOCKED_ROTOR_AMPERES.findIndex(([rating]) => rating >= hp);
  if (at < 0 || hp < LOCKED_ROTOR_AMPERES[0]![0]) return null;
  const [upper, upperAmperes] = LOCKED_ROTOR_AMPERES[at]!;
  const [lower, lowerAmperes] = LOCKED_ROTOR_AMPERES[Math.max(at - 1, 0)]!;
  const share = upper === lower ? 1 : (hp - lower) / (upper - lower);
  return ((lowerAmperes + share * (upperAmperes - lowerAmperes)) * TABLE_VOLTAGE) / lineVoltage;
}
