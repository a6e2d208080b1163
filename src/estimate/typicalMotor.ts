import { decimalLogarithm, logarithm } from '../numeric/logarithm.ts';
import { raised } from '../numeric/raised.ts';

/** Everything here stands in for what nobody wrote down: common practice, no source, unless a source is named. */

/**
 * Least efficiency of class IE2 at 50 Hz in per cent: A·x³ + B·x² + C·x + D, x = log10(P/kW), 0.75 to 200 kW, at 2, 4 and 6
 * poles (IEC 60034-30-1, formula and coefficients from memory; 4 poles, 11 kW gives the table's 89.8 %).
 */
const IE2: Readonly<Record<2 | 4 | 6, readonly [number, number, number, number]>> = {
  2: [0.2972, -3.3454, 13.0651, 79.077],
  4: [0.0278, -1.9247, 10.4395, 80.9761],
  6: [0.0148, -2.4978, 13.247, 77.5603],
};
/** Ends of the formula, kW. Smaller motors go on along it, larger ones stay at its end. */
const IE2_LARGEST = 200;
const SMALLEST = 0.05;

/**
 * Efficiency of an ordinary motor: class IE2; eight and more poles as six.
 *
 * @param power W
 */
export function typicalEfficiency(power: number, poles: number): number {
  const [A, B, C, D] = IE2[poles <= 2 ? 2 : poles === 4 ? 4 : 6];
  const x = decimalLogarithm(Math.min(Math.max(power / 1000, SMALLEST), IE2_LARGEST));
  return (((A * x + B) * x + C) * x + D) / 100;
}

/** [kW, 2, 4, 6, 8 and more poles]; catalogues of ordinary motors scatter by ±0.04. */
const POWER_FACTORS = [
  [0.1, 0.72, 0.64, 0.57, 0.53],
  [1, 0.82, 0.77, 0.71, 0.65],
  [10, 0.87, 0.83, 0.79, 0.74],
  [100, 0.9, 0.87, 0.85, 0.81],
  [1000, 0.91, 0.89, 0.87, 0.84],
] as const;

/**
 * Power factor of an ordinary motor at rated output.
 *
 * @param power W
 */
export function typicalPowerFactor(power: number, poles: number): number {
  const column = poles <= 2 ? 1 : poles === 4 ? 2 : poles === 6 ? 3 : 4;
  return alongLogarithm(
    POWER_FACTORS.map((row) => [row[0], row[column]]),
    power / 1000,
  );
}

/** [kW, slip] of ordinary motors; large ones slip less. */
const SLIPS = [
  [0.1, 0.08],
  [1, 0.055],
  [10, 0.03],
  [100, 0.012],
  [1000, 0.006],
] as const;

/**
 * Slip of an ordinary motor at rated output.
 *
 * @param power W
 */
export function typicalSlip(power: number): number {
  return alongLogarithm(SLIPS, power / 1000);
}

/** Rated slip of NEMA design D: middle of its lowest band, 5 to 8 % (a handbook page after MG 10, looked up). */
export const DESIGN_D_SLIP = 0.065;

/** Rotor inertia of a 1 kW, 4-pole, 50 Hz motor, kg·m², and how it grows with torque and with the number of pole pairs. */
const ROTOR = { inertia: 0.0024, torqueExponent: 1.4, poleExponent: 1.3 } as const;

/**
 * Rotor inertia of an ordinary cage motor, within a factor of two of catalogue figures: grows with torque, and once more
 * with the diameter that more poles need.
 *
 * @param power W
 * @param frequency Hz
 * @returns kg·m²
 */
export function typicalRotorInertia(power: number, frequency: number, poles: number): number {
  const at50Hz = (power / 1000) * (50 / frequency);
  return ROTOR.inertia * raised(at50Hz, ROTOR.torqueExponent) * raised(poles / 4, ROTOR.poleExponent);
}

/** Straight line over log10 of the first entry; beyond the ends the last value. */
function alongLogarithm(points: readonly (readonly [number, number])[], at: number): number {
  const above = points.findIndex(([x]) => x >= at);
  if (above === 0) return points[0]![1];
  if (above < 0) return points.at(-1)![1];
  const [x0, y0] = points[above - 1]!;
  const [x1, y1] = points[above]!;
  return y0 + ((y1 - y0) * logarithm(at / x0)) / logarithm(x1 / x0);
}
