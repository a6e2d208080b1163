import { raised } from '../numeric/raised.ts';
import { HORSEPOWER, POUND_SQUARE_FOOT } from './units.ts';

/**
 * Load inertia that a NEMA design A or B motor must be able to start: MG 1, 12.54.1,
 * Wk² = A·hp^0.95/(n/1000)^2.4 − 0.0685·hp^1.5/(n/1000)^1.8 lb·ft², A = 27 at 3600 r/min, 24 from 300 to 1800 r/min (from
 * memory; agrees with a published table within its rounding).
 *
 * @param power W
 * @param synchronousSpeed rad/s
 * @returns kg·m²
 */
export function nemaExternalInertia(power: number, synchronousSpeed: number): number {
  const hp = power / HORSEPOWER;
  const thousands = (synchronousSpeed * 30) / Math.PI / 1000;
  const A = thousands > 1.8 * 1.001 ? 27 : 24;
  return (
    POUND_SQUARE_FOOT *
    ((A * raised(hp, 0.95)) / raised(thousands, 2.4) - (0.0685 * raised(hp, 1.5)) / raised(thousands, 1.8))
  );
}

/**
 * Load inertia that an IEC design N motor must be able to start at 50 Hz: J = 0.04·P^0.9·p^2.5, P in kW, p pole pairs (IEC
 * 60034-12, from memory, high confidence; the coefficient at 60 Hz is not known).
 *
 * @param power W
 * @returns kg·m²
 */
export function iecExternalInertia(power: number, polePairs: number): number {
  return 0.04 * raised(power / 1000, 0.9) * raised(polePairs, 2.5);
}
