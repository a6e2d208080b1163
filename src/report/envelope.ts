/** Smallest and largest value per column; x is the middle of each column. */
export interface Envelope {
  readonly x: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/**
 * Reduces a dense trace to the smallest and largest value in each of `columns` equal stretches of x, so that no crest
 * is lost whatever the width of the drawing. Neighbouring columns share their border sample: the band has no gaps.
 * A trace with no more samples than columns comes back with low = high.
 *
 * @param x rising, evenly spaced
 */
export function computeEnvelope(x: Float64Array, y: Float64Array, columns: number): Envelope {
  const n = x.length;
  if (n <= columns) return { x, low: y, high: y };
  const middle = new Float64Array(columns);
  const low = new Float64Array(columns);
  const high = new Float64Array(columns);
  for (let c = 0; c < columns; c += 1) {
    const from = Math.floor((c * (n - 1)) / columns);
    const to = Math.floor(((c + 1) * (n - 1)) / columns);
    let least = y[from]!;
    let most = least;
    for (let i = from + 1; i <= to; i += 1) {
      least = Math.min(least, y[i]!);
      most = Math.max(most, y[i]!);
    }
    middle[c] = (x[from]! + x[to]!) / 2;
    low[c] = least;
    high[c] = most;
  }
  return { x: middle, low, high };
}

/**
 * Which samples to keep so that at most `most` remain: in each of most/2 equal stretches the smallest and the largest
 * value, at their own places and in order. Null when the trace is short enough to keep whole.
 */
export function keepExtremes(y: Float64Array, most: number): number[] | null {
  const n = y.length;
  if (n <= most) return null;
  const stretches = Math.floor(most / 2);
  const kept: number[] = [];
  for (let s = 0; s < stretches; s += 1) {
    const from = Math.floor((s * n) / stretches);
    const to = Math.floor(((s + 1) * n) / stretches);
    let least = from;
    let largest = from;
    for (let i = from; i < to; i += 1) {
      if (y[i]! < y[least]!) least = i;
      if (y[i]! > y[largest]!) largest = i;
    }
    kept.push(Math.min(least, largest));
    if (least !== largest) kept.push(Math.max(least, largest));
  }
  return kept;
}

/** The kept samples of a column; the column itself where all are kept. */
export function pick(values: Float64Array, kept: readonly number[] | null): Float64Array {
  if (kept === null) return values;
  const picked = new Float64Array(kept.length);
  for (let k = 0; k < picked.length; k++) picked[k] = values[kept[k]!]!;
  return picked;
}

/** Smallest and largest finite value over several columns; [0, 0] when there is none. */
export function computeExtent(...columns: readonly ArrayLike<number>[]): [number, number] {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const column of columns) {
    for (let i = 0; i < column.length; i += 1) {
      const value = column[i]!;
      if (!Number.isFinite(value)) continue;
      if (value < least) least = value;
      if (value > most) most = value;
    }
  }
  return least > most ? [0, 0] : [least, most];
}

/** An axis domain that contains zero and the extent with a margin above and below for marks. */
export function paddedDomain(extent: readonly [number, number], margin = 0.08): [number, number] {
  const least = Math.min(0, extent[0]);
  const most = Math.max(0, extent[1]);
  const span = most - least || 1;
  return [
    least === 0 ? -0.02 * span : least - margin * span,
    most === 0 ? 0.02 * span : most + margin * span,
  ];
}
