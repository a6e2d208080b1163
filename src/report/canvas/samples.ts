/** Index of the first of the ascending values that is not below `x`; their number where all are. */
export function firstFrom(values: ArrayLike<number>, x: number): number {
  let low = 0;
  let high = values.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (values[middle]! < x) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Whether the values never fall: a column of instants, unlike the speeds of a run. */
export function neverFalls(values: ArrayLike<number>): boolean {
  for (let i = 1; i < values.length; i += 1) if (!(values[i]! >= values[i - 1]!)) return false;
  return true;
}

/** Straight between the samples next to `x`, on ascending xs; NaN outside them. */
export function valueAt(xs: ArrayLike<number>, ys: ArrayLike<number>, x: number): number {
  const n = xs.length;
  if (n === 0 || !(x >= xs[0]! && x <= xs[n - 1]!)) return Number.NaN;
  const i = firstFrom(xs, x);
  if (i === 0 || xs[i] === x) return ys[i]!;
  const share = (x - xs[i - 1]!) / (xs[i]! - xs[i - 1]!);
  return ys[i - 1]! + share * (ys[i]! - ys[i - 1]!);
}
