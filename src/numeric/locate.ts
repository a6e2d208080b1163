/** Iterations after which the search ends whatever the bracket; the Illinois rule needs about ten. */
const MOST_ITERATIONS = 200;

/**
 * Root of g in [a, b], where g(a) and g(b) differ in sign, to a given width: regula falsi with the Illinois rule, with
 * a bisection step whenever the bracket did not halve in three steps. Returns the right end of the final bracket,
 * where the sign has changed.
 *
 * @param width width of the bracket at which the search stops, in units of x
 */
export function locate(
  g: (x: number) => number,
  a: number,
  b: number,
  ga: number,
  gb: number,
  width: number,
): number {
  let left = a;
  let right = b;
  let gLeft = ga;
  let gRight = gb;
  let side = 0;
  let widthThreeAgo = right - left;
  for (let i = 1; i <= MOST_ITERATIONS && right - left > width; i++) {
    let x = (left * gRight - right * gLeft) / (gRight - gLeft);
    if (i % 3 === 0) {
      if (right - left > widthThreeAgo / 2) x = (left + right) / 2;
      widthThreeAgo = right - left;
    }
    // Keep off the ends, so that the bracket closes from both sides.
    const edge = Math.min(width / 2, (right - left) / 4);
    x = Math.min(Math.max(x, left + edge), right - edge);
    if (x <= left || x >= right) break;
    const value = g(x);
    if (value === 0) return x;
    if (value > 0 === gRight > 0) {
      right = x;
      gRight = value;
      if (side === 1) gLeft /= 2;
      side = 1;
    } else {
      left = x;
      gLeft = value;
      if (side === -1) gRight /= 2;
      side = -1;
    }
  }
  return right;
}
