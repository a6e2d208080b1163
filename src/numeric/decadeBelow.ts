/**
 * The largest power of ten that is not above x > 0, such as 0.01 of 0.05. Read from the number's decimal digits, so that a
 * power of ten itself gives itself, in every engine.
 */
export function decadeBelow(x: number): number {
  return Number(`1e${decimalExponent(x)}`);
}

/** Whole n with 10^n ≤ x < 10^(n+1), for finite x > 0. */
export function decimalExponent(x: number): number {
  const digits = x.toExponential();
  return Number(digits.slice(digits.indexOf('e') + 1));
}
