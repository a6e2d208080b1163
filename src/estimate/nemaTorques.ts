import { rowOfRating } from './powerRow.ts';
import { HORSEPOWER } from './units.ts';

/** Least torques of a standard design, multiples of rated torque. */
export interface TorqueMinima {
  readonly lockedRotor: number;
  readonly breakdown: number;
}

/** [hp, 2 poles, 4 poles, 6 poles, 8 poles] in per cent of rated torque; null: no such motor in the table. */
type Row = readonly [number, number | null, number | null, number | null, number | null];

/**
 * Least locked-rotor torque of designs A and B, NEMA MG 1, 12.38.1, 60 Hz. Looked up on an engineering reference page: 3 to
 * 10 and 20 hp at 2 and 4 poles. The rest from memory, high confidence.
 */
const LOCKED_ROTOR_AB: readonly Row[] = [
  [0.5, null, null, null, 140],
  [0.75, null, null, 175, 135],
  [1, null, 275, 170, 135],
  [1.5, 175, 250, 165, 130],
  [2, 170, 235, 160, 130],
  [3, 160, 215, 155, 130],
  [5, 150, 185, 150, 130],
  [7.5, 140, 175, 150, 125],
  [10, 135, 165, 150, 125],
  [15, 130, 160, 140, 125],
  [20, 130, 150, 135, 125],
  [25, 130, 150, 135, 125],
  [30, 130, 150, 135, 125],
  [40, 125, 140, 135, 125],
  [50, 120, 140, 135, 125],
  [60, 120, 140, 135, 125],
  [75, 105, 140, 135, 125],
  [100, 105, 125, 125, 125],
  [125, 100, 110, 125, 120],
  [150, 100, 110, 120, 120],
  [200, 100, 100, 120, 120],
  [250, 70, 80, 100, 100],
  [350, 70, 80, 100, null],
  [500, 70, 80, null, null],
];

/** Least breakdown torque of designs A and B, NEMA MG 1, 12.39.1, 60 Hz. Certainty as for the locked rotor. */
const BREAKDOWN_AB: readonly Row[] = [
  [0.5, null, null, null, 225],
  [0.75, null, null, 275, 220],
  [1, null, 300, 265, 215],
  [1.5, 250, 280, 250, 210],
  [2, 240, 270, 240, 210],
  [3, 230, 250, 230, 205],
  [5, 215, 225, 215, 205],
  [7.5, 200, 215, 205, 200],
  [200, 200, 200, 200, 200],
  [250, 175, 175, 175, 175],
  [350, 175, 175, 175, null],
  [500, 175, 175, null, null],
];

/** Least locked-rotor torque of design C, NEMA MG 1, 12.38.2, 60 Hz; from memory, medium confidence. */
const LOCKED_ROTOR_C: readonly Row[] = [
  [1, null, 285, 255, 225],
  [2, null, 285, 250, 225],
  [3, null, 270, 250, 225],
  [5, null, 255, 250, 225],
  [10, null, 250, 225, 200],
  [15, null, 225, 210, 200],
  [200, null, 200, 200, 200],
];

/** Least breakdown torque of design C, NEMA MG 1, 12.39.2, 60 Hz; from memory, medium confidence (range looked up). */
const BREAKDOWN_C: readonly Row[] = [
  [1, null, 200, 225, 200],
  [3, null, 200, 225, 200],
  [5, null, 200, 200, 200],
  [200, null, 190, 190, 190],
];

/**
 * Design D has 275 % at 4, 6 and 8 poles up to 150 hp, MG 1, 12.38.3 (from memory, high confidence; the figure looked up in
 * a handbook page after MG 10, which states the same for breakdown).
 */
const DESIGN_D = 2.75;
const LARGEST_D = 150;

const COLUMN: Readonly<Record<number, 1 | 2 | 3 | 4>> = { 2: 1, 4: 2, 6: 3, 8: 4 };

/**
 * Least locked-rotor and breakdown torque of a NEMA design; a power between two ratings takes the row of the next larger.
 *
 * @param power W
 * @returns null where the standard has no such motor
 */
export function nemaTorques(
  design: 'A' | 'B' | 'C' | 'D',
  power: number,
  poles: number,
): TorqueMinima | null {
  const hp = power / HORSEPOWER;
  const column = COLUMN[poles];
  if (column === undefined) return null;
  if (design === 'D')
    return poles > 2 && hp <= LARGEST_D * 1.02 ? { lockedRotor: DESIGN_D, breakdown: DESIGN_D } : null;
  const lockedRotor = rowOfRating(design === 'C' ? LOCKED_ROTOR_C : LOCKED_ROTOR_AB, hp)?.[column] ?? null;
  const breakdown = rowOfRating(design === 'C' ? BREAKDOWN_C : BREAKDOWN_AB, hp)?.[column] ?? null;
  if (lockedRotor === null || breakdown === null) return null;
  return { lockedRotor: lockedRotor / 100, breakdown: breakdown / 100 };
}
