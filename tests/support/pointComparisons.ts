import type { Point } from '../../src/simulate/trajectory.ts';
import type { Comparison } from './worstOf.ts';

/** What the exact solution gives at an instant. */
export interface ExactPoint {
  /** Currents of phases A, B and C, A. */
  readonly phases: readonly number[];
  /** N·m */
  readonly torque: number;
}

/** What errors are measured by: the largest current, A, and the largest swing of torque, N·m, of the run. */
export interface Swings {
  readonly current: number;
  readonly torque: number;
}

/**
 * Share of the swing that is allowed: the run is integrated to 1e-9 of the flux, and a current is that over a leakage of
 * about a twentieth.
 */
const ALLOWED = 1e-7;

/** Compares the three currents and the torque of a run with the exact solution at one instant. */
export function pointComparisons(
  ours: Pick<Point, 'iA' | 'iB' | 'iC' | 'torque'>,
  exact: ExactPoint,
  swings: Swings,
  when: string,
): { readonly currents: readonly Comparison[]; readonly torque: Comparison } {
  const currents = (['A', 'B', 'C'] as const).map((phase, i) => ({
    ours: ours[`i${phase}`],
    published: exact.phases[i]!,
    tolerance: { absolute: ALLOWED * swings.current },
    quantity: `current of phase ${phase} ${when}`,
    unit: 'A',
  }));
  const torque = {
    ours: ours.torque,
    published: exact.torque,
    tolerance: { absolute: ALLOWED * swings.torque },
    quantity: `torque ${when}`,
    unit: 'N·m',
  };
  return { currents, torque };
}
