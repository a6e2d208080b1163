/**
 * The angle of a vector from + − * / alone, the same bits in every engine (see sineCosine.ts).
 *
 * Method: the tangent t = least/most of the two sizes is at most 1; the nearest of arctan 0, ½ and 1 is taken off by
 * arctan t − arctan c = arctan((t − c)/(1 + t·c)), which leaves at most ¼ for Taylor's series of the arctangent, to the
 * 25th power. Error: 1 unit in the last place.
 */

/** Nothing is taken off. */
const NONE = { c: 0, angle: 0, rest: 0 } as const;
/** rad; arctan ½, and what its double leaves of it. */
const HALF = { c: 0.5, angle: 0.4636476090008061, rest: 2.2698777452961687e-17 } as const;
/** rad; arctan 1 = π/4, likewise. */
const ONE = { c: 1, angle: Math.PI / 4, rest: 3.061616997868383e-17 } as const;
/** rad; a quarter of a turn and half of one, likewise. */
const QUARTER = { angle: Math.PI / 2, rest: 6.123233995736766e-17 } as const;
/** See QUARTER. */
const HALF_TURN = { angle: Math.PI, rest: 1.2246467991473532e-16 } as const;
/** Tangent of half of arctan ½, √5 − 2: from here ½ is nearer than 0. */
const NEAR_HALF = 0.2360679774997897;
/** Tangent of the angle midway between arctan ½ and arctan 1: from here 1 is nearer than ½. */
const NEAR_ONE = 0.7207592200561264;

/** Coefficients of arctan t / t − 1 in powers of t², ±1/(2n + 1); the first one left out is below 3e-17 of the result. */
const COEFFICIENTS = [3, 5, 7, 9, 11, 13, 15, 17, 19, 21, 23, 25, 27].map((n) =>
  n % 4 === 3 ? -1 / n : 1 / n,
);

/**
 * The angle of the vector (x, y) from the x axis, −π … π rad, as `Math.atan2`.
 * @param y first, as there
 */
export function polarAngle(y: number, x: number): number {
  const a = Math.abs(x);
  const b = Math.abs(y);
  if (Number.isNaN(a) || Number.isNaN(b)) return Number.NaN;
  const steep = b > a;
  const most = steep ? b : a;
  const least = steep ? a : b;
  // Both infinite: on the diagonal; both zero: on an axis.
  const t = most === 0 ? 0 : least === most ? 1 : least / most;
  const { c, angle, rest } = t < NEAR_HALF ? NONE : t < NEAR_ONE ? HALF : ONE;
  const r = (t - c) / (1 + t * c);
  const z = r * r;
  let series = 0;
  for (let i = COEFFICIENTS.length - 1; i >= 0; i--) series = z * (COEFFICIENTS[i]! + series);
  // The angle in the first octant is angle + small.
  const small = r + (r * series + rest);
  const size = fromAxis(angle, small, steep, x < 0 || Object.is(x, -0));
  return y < 0 || Object.is(y, -0) ? -size : size;
}

/** From the first octant to the upper half plane; the differences of the large terms are exact or nearly so. */
function fromAxis(angle: number, small: number, steep: boolean, left: boolean): number {
  if (steep)
    return left
      ? QUARTER.angle + angle + (small + QUARTER.rest)
      : QUARTER.angle - angle - (small - QUARTER.rest);
  return left ? HALF_TURN.angle - angle - (small - HALF_TURN.rest) : angle + small;
}
