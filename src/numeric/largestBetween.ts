/** Where a function is largest, and how large. */
export interface Maximum {
  readonly x: number;
  readonly value: number;
}

/** Smaller share of the golden section. */
const SHARE = (3 - Math.sqrt(5)) / 2;
/** Steps after which the search ends whatever the bracket; a smooth crest takes about ten. */
const MOST_STEPS = 100;

/**
 * Largest value of f in [from, to], where f has one crest or is monotonic: parabolic interpolation safeguarded by
 * golden sections (Brent, Algorithms for Minimization without Derivatives, 1973, chapter 5; written from memory).
 * The ends count too, so that a maximum at a boundary is found.
 *
 * @param width accuracy of x at which the search stops, in units of x
 */
export function largestBetween(f: (x: number) => number, from: number, to: number, width: number): Maximum {
  let a = from;
  let b = to;
  // best, second best and third best point so far
  let x = a + SHARE * (b - a);
  let w = x;
  let v = x;
  let fx = f(x);
  let fw = fx;
  let fv = fx;
  let step = 0;
  let stepBefore = 0;
  for (let i = 0; i < MOST_STEPS; i++) {
    const middle = (a + b) / 2;
    if (Math.abs(x - middle) <= 2 * width - (b - a) / 2) break;
    let useGolden = true;
    if (Math.abs(stepBefore) > width) {
      const r = (x - w) * (fx - fv);
      let q = (x - v) * (fx - fw);
      let p = (x - v) * q - (x - w) * r;
      q = 2 * (q - r);
      if (q > 0) p = -p;
      q = Math.abs(q);
      const before = stepBefore;
      stepBefore = step;
      if (Math.abs(p) < Math.abs((q * before) / 2) && p > q * (a - x) && p < q * (b - x)) {
        step = p / q;
        useGolden = false;
        const u = x + step;
        if (u - a < 2 * width || b - u < 2 * width) step = x < middle ? width : -width;
      }
    }
    if (useGolden) {
      stepBefore = x < middle ? b - x : a - x;
      step = SHARE * stepBefore;
    }
    const u = Math.abs(step) >= width ? x + step : x + (step > 0 ? width : -width);
    const fu = f(u);
    if (fu >= fx) {
      if (u < x) b = x;
      else a = x;
      v = w;
      fv = fw;
      w = x;
      fw = fx;
      x = u;
      fx = fu;
    } else {
      if (u < x) a = u;
      else b = u;
      if (fu >= fw || w === x) {
        v = w;
        fv = fw;
        w = u;
        fw = fu;
      } else if (fu >= fv || v === x || v === w) {
        v = u;
        fv = fu;
      }
    }
  }
  let best: Maximum = { x, value: fx };
  for (const end of [from, to]) {
    const value = f(end);
    if (value > best.value) best = { x: end, value };
  }
  return best;
}
