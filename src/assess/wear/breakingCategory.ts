import { STANDARD_LIMITS } from '../standardLimits.ts';

/** How a breaking compares with the two categories of motor duty. */
export type BreakingCategory = 'AC-3-like' | 'AC-4-like';

/** What a contactor's currents and voltages are compared with. */
export interface ContactorRating {
  /** Rated operational current in AC-3, A r.m.s. */
  readonly current: number;
  /** Rated operational voltage, V r.m.s. line to line. */
  readonly voltage: number;
}

/** Geometric mean of the breaking currents of the two durability tests, multiple of the rated current: √6. */
export const CATEGORY_CURRENT = Math.sqrt(
  STANDARD_LIMITS.durabilityBreakAc3.value * STANDARD_LIMITS.durabilityBreakAc4.value,
);

/** Geometric mean of the voltages after breaking of the two tests, share of the rated voltage: √0.17. */
export const CATEGORY_VOLTAGE = Math.sqrt(
  STANDARD_LIMITS.durabilityVoltageAc3.value * STANDARD_LIMITS.durabilityVoltageAc4.value,
);

/** The rule in words. */
export const CATEGORY_RULE =
  'AC-4-like where the breaking current exceeds √6 times the rated current or the recovery voltage exceeds √0.17 of the rated ' +
  'voltage, the geometric means of the two durability tests of IEC 60947-4-1; else AC-3-like (common practice, no source)';

/**
 * Sorts a breaking by simulated current and recovery voltage, by `CATEGORY_RULE`.
 *
 * @param current A r.m.s.
 * @param recoveryVoltage V r.m.s. line to line
 */
export function breakingCategory(
  current: number,
  recoveryVoltage: number,
  rating: ContactorRating,
): BreakingCategory {
  const heavy =
    current > CATEGORY_CURRENT * rating.current || recoveryVoltage > CATEGORY_VOLTAGE * rating.voltage;
  return heavy ? 'AC-4-like' : 'AC-3-like';
}
