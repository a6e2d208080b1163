/** Place of an instant between two samples. */
export interface SamplePlace {
  /** The sample at or before it. */
  readonly index: number;
  /** Share of the way to the next sample, 0 up to but not including 1. */
  readonly share: number;
}

/**
 * Where t lies among ascending instants; outside them at their nearest end.
 *
 * @param instants s, at least one, evenly spaced or not
 */
export function sampleBelow(instants: ArrayLike<number>, t: number): SamplePlace {
  const last = instants.length - 1;
  if (!(t > instants[0]!)) return { index: 0, share: 0 };
  if (t >= instants[last]!) return { index: last, share: 0 };
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (instants[middle]! <= t) low = middle;
    else high = middle;
  }
  const from = instants[low]!;
  return { index: low, share: (t - from) / (instants[high]! - from) };
}
