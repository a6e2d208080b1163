import { randomStream } from '../draws/randomStream.ts';
import { indicesOf } from './sensitivityIndices.ts';

/** Bounds of an interval of 95 % confidence. */
export interface Bounds {
  readonly low: number;
  readonly high: number;
}

/** Bounds of all indices of one metric. */
export interface IndexBounds {
  readonly first: readonly Bounds[];
  readonly total: readonly Bounds[];
  /** Of the sum of the first-order indices. */
  readonly sum: Bounds;
}

/**
 * Resamples; Efron and Tibshirani, An Introduction to the Bootstrap (1993), section 13.3, ask for 1000 for
 * such intervals.
 */
const RESAMPLES = 1000;
/** Probability beyond each bound. */
const TAIL = 0.025;
/** Resamples beyond each bound: their values of this rank from both ends are the bounds. */
const BEYOND = RESAMPLES * TAIL;
/** 2^52: runs draw from the streams of their own numbers, of which none is as large. */
const FIRST_STREAM = 4_503_599_627_370_496;

/**
 * Percentile intervals of the indices from blocks drawn with replacement (Archer, Saltelli and Sobol, J.
 * Statist. Comput. Simul. 58 (1997) 99). Memory: as much again as the blocks, and 1000 numbers per index.
 *
 * @param values see indicesOf; at least two blocks
 * @param stream number of the metric: each draws numbers of its own
 */
export function bootstrapped(values: Float64Array, count: number, seed: number, stream: number): IndexBounds {
  const size = count + 2;
  const blocks = values.length / size;
  const next = randomStream(seed, FIRST_STREAM + stream);
  const drawn = new Float64Array(values.length);
  const lists = Array.from({ length: 2 * count + 1 }, () => new Float64Array(RESAMPLES));
  let kept = 0;
  for (let resample = 0; resample < RESAMPLES; resample++) {
    for (let to = 0; to < drawn.length; to += size) {
      const from = Math.floor(next() * blocks) * size;
      for (let k = 0; k < size; k++) drawn[to + k] = values[from + k]!;
    }
    const { first, total, variance } = indicesOf(drawn, count);
    // A resample of one and the same block over and over has no variance to share out.
    if (variance === 0) continue;
    for (let i = 0; i < count; i++) {
      lists[i]![kept] = first[i]!;
      lists[count + i]![kept] = total[i]!;
    }
    lists[2 * count]![kept] = first.reduce((sum, index) => sum + index, 0);
    kept++;
  }
  const bounds = lists.map((list): Bounds => {
    const sorted = list.subarray(0, kept).sort();
    const beyond = Math.min(BEYOND, Math.floor((kept - 1) / 2));
    return { low: sorted[beyond]!, high: sorted[kept - 1 - beyond]! };
  });
  return { first: bounds.slice(0, count), total: bounds.slice(count, 2 * count), sum: bounds[2 * count]! };
}
