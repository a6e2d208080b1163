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

/** The mark after the shaft has turned, seen as in the picture of the field: it begins to the right, forward is against the clock. */
export function shaftMark({ position }: Pick<Frame, 'position'>): ShaftMark {
  // y points down in a drawing.
  const x = Math.cos(position);
  const y = -Math.sin(position);
  return {
    x1: MIDDLE + INNER * x,
    y1: MIDDLE + INNER * y,
    x2: MIDDLE + OUTER * x,
    y2: MIDDLE + OUTER * y,
  };
}
