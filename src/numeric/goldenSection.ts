export interface Maximum {
  readonly x: number;
  readonly value: number;
}

/** Smaller share of the golden section. */
const SHARE = (3 - Math.sqrt(5)) / 2;

/**
 * Largest value of f in [from, to] by golden section; the ends count too, so that a maximum at a boundary is found.
 * @param width width of the bracket at which the search stops, in units of x
 */
export function goldenSection(f: (x: number) => number, from: number, to: number, width: number): Maximum {
  let a = from;
  let b = to;
  let left = a + SHARE * (b - a);
  let right = b - SHARE * (b - a);
  let fLeft = f(left);
  let fRight = f(right);
  while (b - a > width) {
    if (fLeft >= fRight) {
      b = right;
      right = left;
      fRight = fLeft;
      left = a + SHARE * (b - a);
      fLeft = f(left);
    } else {
      a = left;
      left = right;
      fLeft = fRight;
      right = b - SHARE * (b - a);
      fRight = f(right);
    }
    if (left <= a || right >= b) break;
  }
  let best: Maximum = { x: (a + b) / 2, value: f((a + b) / 2) };
  for (const x of [from, to]) {
    const value = f(x);
    if (value > best.value) best = { x, value };
  }
  return best;
}
