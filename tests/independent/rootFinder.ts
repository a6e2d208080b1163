/**
 * Shrinks a bracket around a sign change by alternating secant and halving steps.
 * @param f function whose values at a and b differ in sign
 * @param fa,fb its values there
 * @param width the bracket is shrunk below this
 * @returns the end of the bracket on b's side: the sign there is already the new one
 */
export function shrinkBracket(
  f: (x: number) => number,
  a: number,
  fa: number,
  b: number,
  fb: number,
  width: number,
): number {
  let left = a;
  let fLeft = fa;
  let right = b;
  let fRight = fb;
  for (let i = 0; i < 100 && right - left > width && fRight !== 0; i++) {
    let x = (left + right) / 2;
    if (i % 3 !== 2) {
      // A secant step moved half the wanted width outwards, so that both ends close in on the root.
      const secant = left - (fLeft * (right - left)) / (fRight - fLeft);
      const nudge = secant - left < right - secant ? width / 2 : -width / 2;
      const moved = secant + nudge;
      if (moved > left && moved < right) x = moved;
    }
    const fx = f(x);
    if (fx !== 0 && Math.sign(fx) === Math.sign(fLeft)) {
      left = x;
      fLeft = fx;
    } else {
      right = x;
      fRight = fx;
    }
  }
  return right;
}

/** Cubic through values and slopes at both ends of a step of length h, at the fraction x of it. */
export function hermite(v0: number, s0: number, v1: number, s1: number, h: number, x: number): number {
  const rest = 1 - x;
  return (
    v0 * (1 + 2 * x) * rest * rest +
    h * s0 * x * rest * rest +
    v1 * x * x * (3 - 2 * x) -
    h * s1 * x * x * rest
  );
}
