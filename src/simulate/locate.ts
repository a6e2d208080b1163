import { EVENT_WIDTH } from './tolerances.ts';

/** Iterations after which the bracket is halved by bisection only; the Illinois rule needs about ten. */
const MOST_ITERATIONS = 60;

/**
 * Root of g in [a, b], where g(a) and g(b) differ in sign, to `EVENT_WIDTH` seconds: regula falsi with the Illinois
 * rule, with a bisection step whenever the bracket did not halve in three steps. Returns the right end of the final
 * bracket, where the sign has changed.
 */
export function locate(g: (t: number) => number, a: number, b: number, ga: number, gb: number): number {
  let left = a;
  let right = b;
  let gLeft = ga;
  let gRight = gb;
  let side = 0;
  let widthThreeAgo = right - left;
  for (let i = 1; i <= MOST_ITERATIONS && right - left > EVENT_WIDTH; i++) {
    let t = (left * gRight - right * gLeft) / (gRight - gLeft);
    if (i % 3 === 0) {
      if (right - left > widthThreeAgo / 2) t = (left + right) / 2;
      widthThreeAgo = right - left;
    }
    // Keep off the ends, so that the bracket closes from both sides.
    const edge = Math.min(EVENT_WIDTH / 2, (right - left) / 4);
    t = Math.min(Math.max(t, left + edge), right - edge);
    if (t <= left || t >= right) break;
    const value = g(t);
    if (value === 0) return t;
    if (value > 0 === gRight > 0) {
      right = t;
      gRight = value;
      if (side === 1) gLeft /= 2;
      side = 1;
    } else {
      left = t;
      gLeft = value;
      if (side === -1) gRight /= 2;
      side = -1;
    }
  }
  return right;
}
