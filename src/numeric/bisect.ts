/** Halvings that take any interval of ordinary numbers to the last bit. */
const HALVINGS = 200;

/**
 * Root of a function that has opposite signs at `low` and `high`, to the last bit, by bisection: for the few roots
 * outside the time integration, where certainty is worth more than speed.
 */
export function bisect(f: (x: number) => number, low: number, high: number): number {
  const rising = f(high) > 0;
  let a = low;
  let b = high;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (a + b) / 2;
    if (middle <= Math.min(a, b) || middle >= Math.max(a, b)) break;
    if (f(middle) > 0 === rising) b = middle;
    else a = middle;
  }
  return (a + b) / 2;
}
