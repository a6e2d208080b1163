/** Middle of the square of 200 in which the field is drawn. */
export const CENTRE = 100;

/** Radii of the drawing of the field, in its own units. */
export const RADIUS = {
  /** Inner edge of the stator. */
  stator: 84,
  /** Outer edge of the stator; the letters of the phases stand between. */
  frame: 98,
  letters: 91,
  /** Longest arrow. */
  arrow: 80,
  /** Within the circle that the flux of no load describes. */
  rotorOuter: 44,
  rotorInner: 36,
} as const;

/** A space vector as an arrow from the middle. */
export interface FieldArrow {
  /** Its tip. */
  readonly x: number;
  readonly y: number;
  /** SVG path of the head; empty for an arrow too short to have one. */
  readonly head: string;
  /** Longer than there is room: drawn at full length, with a bar across its end. */
  readonly cut: boolean;
  /** SVG path of that bar; empty where nothing is cut. */
  readonly bar: string;
}

/** Length and half width of an arrow's head, and half the length of the bar of one that is cut. */
const HEAD = { length: 9, half: 4, bar: 6 } as const;

/** Point at a radius and an angle against the clock from the axis of phase A, rad; y points down in a drawing. */
export function fieldPoint(radius: number, angle: number): { readonly x: number; readonly y: number } {
  return { x: CENTRE + radius * Math.cos(angle), y: CENTRE - radius * Math.sin(angle) };
}

/**
 * Arrow of a space vector.
 *
 * @param full the magnitude that takes up the whole length, in the vector's unit
 */
export function fieldArrow(alpha: number, beta: number, full: number): FieldArrow {
  const size = full > 0 ? Math.hypot(alpha, beta) / full : 0;
  const cut = size > 1;
  const length = RADIUS.arrow * Math.min(1, size);
  const angle = Math.atan2(beta, alpha);
  const tip = fieldPoint(length, angle);
  return {
    ...tip,
    head: length > HEAD.length ? headPath(tip, length, angle) : '',
    cut,
    bar: cut ? `M${across(length, angle, HEAD.bar)}L${across(length, angle, -HEAD.bar)}` : '',
  };
}

function headPath(tip: { readonly x: number; readonly y: number }, length: number, angle: number): string {
  const root = length - HEAD.length;
  return `M${tip.x.toFixed(2)} ${tip.y.toFixed(2)}L${across(root, angle, HEAD.half)}L${across(root, angle, -HEAD.half)}Z`;
}

/** A point at a radius, aside of the ray at an angle. */
function across(radius: number, angle: number, aside: number): string {
  const x = CENTRE + radius * Math.cos(angle) - aside * Math.sin(angle);
  const y = CENTRE - radius * Math.sin(angle) - aside * Math.cos(angle);
  return `${x.toFixed(2)} ${y.toFixed(2)}`;
}
