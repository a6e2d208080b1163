import { iecExternalInertia, nemaExternalInertia } from './externalInertia.ts';

/** A load inertia nobody stated, and where it comes from. */
export interface AssumedInertia {
  /** At the motor shaft, kg·m². */
  readonly value: number;
  readonly source: string;
}

/** Hz either side of 50 within which the IEC formula, which holds at 50 Hz, is used. */
const NEAR_50_HZ = 5;

/**
 * The load inertia that a standard demands the motor can start: what stands in for one that nobody knows. Real loads have
 * mostly less, so that times and heats come out on the safe side.
 *
 * @param power W
 * @param frequency Hz
 */
export function assumedLoadInertia(power: number, frequency: number, poles: number): AssumedInertia {
  const iec = {
    value: iecExternalInertia(power, poles / 2),
    source: 'the external inertia a design N motor must start, IEC 60034-12',
  };
  if (Math.abs(frequency - 50) <= NEAR_50_HZ) return iec;
  const value = nemaExternalInertia(power, (4 * Math.PI * frequency) / poles);
  // The formula turns back far above the largest motors of its table.
  return value > 0
    ? { value, source: 'the load inertia a design A or B motor must start, NEMA MG 1-12.54' }
    : { ...iec, source: `${iec.source}, at 50 Hz` };
}
