/** Between these the squares of numbers neither overflow nor lose digits. */
const SAFE = { least: 1e-140, most: 1e150 } as const;

/**
 * √(x² + y²) from exact operations, the same bits in every engine (see sineCosine.ts); error 1 unit in the last place. Sizes
 * whose squares leave the range of numbers are divided by the larger one first.
 */
export function hypotenuse(x: number, y: number): number {
  const a = Math.abs(x);
  const b = Math.abs(y);
  const large = Math.max(a, b);
  if (large > SAFE.least && large < SAFE.most) return Math.sqrt(a * a + b * b);
  if (a === Number.POSITIVE_INFINITY || b === Number.POSITIVE_INFINITY) return Number.POSITIVE_INFINITY;
  if (large === 0 || Number.isNaN(large)) return large;
  const ratio = Math.min(a, b) / large;
  return large * Math.sqrt(1 + ratio * ratio);
}

/** √(Σ x²) of a list, summed in its order; 0 of none. */
export function euclideanNorm(values: readonly number[]): number {
  let large = 0;
  let sum = 0;
  for (const value of values) {
    large = Math.max(large, Math.abs(value));
    sum += value * value;
  }
  if (large === 0 || (large > SAFE.least && large < SAFE.most) || !Number.isFinite(large))
    return Math.sqrt(sum);
  return large * euclideanNorm(values.map((value) => value / large));
}
