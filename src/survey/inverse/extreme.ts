import type { Boundary } from './boundary.ts';

/** Inverse questions, in the order of presentation. */
export const EXTREME_NAMES = [
  'largestInertia',
  'mostOperations',
  'smallestResistor',
  'shortestDeadTime',
  'longestDeadTime',
  'dropOutForLeastCreep',
] as const;

/** Name of an inverse question. */
export type ExtremeName = (typeof EXTREME_NAMES)[number];

/** How far one quantity may be changed until a criterion no longer passes, everything else as it is. */
export interface Extreme {
  readonly name: ExtremeName;
  /** SI unit of the quantity: 'kg·m²' at the load's shaft, '1/h', 'Ω', 's', 'rad/s'. */
  readonly unit: string;
  /** The scenario's own value, in `unit`; null: it has none. */
  readonly present: number | null;
  /** Null where the question was not answered; `missing` then says why. */
  readonly boundary: Boundary | null;
  /** Why the question was not answered, in words; null where it was. */
  readonly missing: string | null;
  /** What a reader must know; may be empty. */
  readonly remark: string;
}
