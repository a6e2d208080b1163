import { fieldPoint, RADIUS } from './fieldArrow.ts';

/** The axis of a phase's winding: where its letter stands and where it meets the stator. */
export interface FieldAxis {
  readonly phase: 'A' | 'B' | 'C';
  readonly x: number;
  readonly y: number;
  readonly endX: number;
  readonly endY: number;
}

/** Angle from one phase's axis to the next, rad. */
const THIRD_TURN = (2 * Math.PI) / 3;

/** The axes of the phases: A to the right, B and C a third of a turn on, against the clock. */
export function fieldAxes(): FieldAxis[] {
  return (['A', 'B', 'C'] as const).map((phase, k) => {
    const end = fieldPoint(RADIUS.stator, k * THIRD_TURN);
    return { phase, ...fieldPoint(RADIUS.letters, k * THIRD_TURN), endX: end.x, endY: end.y };
  });
}
