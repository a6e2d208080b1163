/** Indices of all fields for one metric. */
export interface Indices {
  /** Mean and variance over draws A and B. */
  readonly mean: number;
  readonly variance: number;
  /** Largest magnitude among these values. */
  readonly largest: number;
  /** One per field; not numbers where the variance is 0. */
  readonly first: readonly number[];
  readonly total: readonly number[];
}

/**
 * First-order indices V_i/V with V_i the mean of f(B)·(f(AB_i) − f(A)) (Saltelli et al., Computer Physics
 * Communications 181 (2010) 259, table 2 (b)), total ones with the mean of (f(A) − f(AB_i))²/2 (Jansen,
 * Computer Physics Communications 117 (1999) 35). V is the variance of all f(A) and f(B) together. f is taken
 * from its mean, without which the first ones are as uncertain as the mean is large.
 *
 * @param values blocks of fields + 2 numbers: f(A), f(B), f(AB_0), f(AB_1), …
 * @param count number of fields
 */
export function indicesOf(values: Float64Array, count: number): Indices {
  const size = count + 2;
  const blocks = values.length / size;
  const base = values[0]!;
  let sum = 0;
  let largest = 0;
  for (let at = 0; at < values.length; at += size) {
    sum += values[at]! - base + (values[at + 1]! - base);
    largest = Math.max(largest, Math.abs(values[at]!), Math.abs(values[at + 1]!));
  }
  const mean = base + sum / (2 * blocks);
  let squares = 0;
  const first = new Array<number>(count).fill(0);
  const total = new Array<number>(count).fill(0);
  for (let at = 0; at < values.length; at += size) {
    const a = values[at]!;
    const b = values[at + 1]! - mean;
    squares += (a - mean) * (a - mean) + b * b;
    for (let i = 0; i < count; i++) {
      const off = values[at + 2 + i]! - a;
      first[i]! += b * off;
      total[i]! += off * off;
    }
  }
  const variance = squares / (2 * blocks);
  return {
    mean,
    variance,
    largest,
    first: first.map((part) => part / blocks / variance),
    total: total.map((part) => part / blocks / 2 / variance),
  };
}
