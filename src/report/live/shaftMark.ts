import type { Frame } from './frame.ts';

/** Square in which a shaft's end is drawn, its middle, and the radii of the two ends of the mark on it. */
const MIDDLE = 30;
const INNER = 8;
const OUTER = 22;

/** A mark on the end of a shaft, from the inner to the outer end, in a square of 60. */
export interface ShaftMark {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

/** The mark after the shaft has turned: at rest it points upwards, forward is with the clock. */
export function shaftMark({ position }: Pick<Frame, 'position'>): ShaftMark {
  const x = Math.sin(position);
  const y = -Math.cos(position);
  return {
    x1: MIDDLE + INNER * x,
    y1: MIDDLE + INNER * y,
    x2: MIDDLE + OUTER * x,
    y2: MIDDLE + OUTER * y,
  };
}
