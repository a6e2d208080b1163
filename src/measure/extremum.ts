import { largestBetween } from '../numeric/largestBetween.ts';
import { cellAt, NODES_PER_CELL, type Quadrature, signalIn } from './quadrature.ts';
import type { Signal } from './signals.ts';

/** A largest value and when it occurs. */
export interface Extremum {
  readonly value: number;
  /** s */
  readonly time: number;
}

/**
 * A sample at the edge of a window or segment may miss its crest by this fraction of the swing: nodes lie at most 1/14
 * period apart, so that a swing at twice the supply frequency is sampled within 26° of its crest, 1 − cos 26° = 10 %.
 */
const SAMPLING_LOSS = 0.1;
/** Differences below this fraction of the swing are rounding: a plateau is not searched crest by crest. */
const ROUNDING = 1e-12;
/** Width at which the refinement of a crest stops, s: at 60 Hz a crest is flat to 1e-11 over it. */
const REFINED_WIDTH = 1e-8;

/**
 * Largest value of a shape of a signal inside [ta, tb], from the interpolant. Crests of the samples are refined by
 * golden section, the most promising first, until none is left that could beat the best: a smooth crest rises above
 * its highest sample by less than half of what that sample rises above its neighbours.
 *
 * @param floor values up to this are not looked for
 * @returns null when the interval holds no sample (or only NaN), or none above the floor
 */
export function largest(
  quadrature: Quadrature,
  signal: Signal,
  shape: Shape,
  ta: number,
  tb: number,
  floor = Number.NEGATIVE_INFINITY,
): Extremum | null {
  const { nodeTime, samples } = quadrature;
  const column = samples[signal];
  let first = cellAt(quadrature, ta) * NODES_PER_CELL;
  let last = (cellAt(quadrature, tb) + 1) * NODES_PER_CELL - 1;
  while (first <= last && nodeTime[first]! <= ta) first++;
  while (last >= first && nodeTime[last]! >= tb) last--;
  // Read some thousand times a run, hence by the sign and not by a function.
  const magnitude = shape === 'magnitude';
  const sign = shape === 'smallest' ? -1 : 1;
  let swing = 0;
  let top = Number.NEGATIVE_INFINITY;
  let bottom = Number.POSITIVE_INFINITY;
  for (let node = first; node <= last; node++) {
    const raw = column[node]!;
    const value = magnitude ? Math.abs(raw) : sign * raw;
    if (value > top) top = value;
    if (value < bottom) bottom = value;
    if (Math.abs(raw) > swing) swing = Math.abs(raw);
  }
  const highest = Math.max(floor, top);
  const isPlateau = top - bottom <= ROUNDING * swing;
  const candidates: { node: number; bound: number }[] = [];
  let here = Number.NaN;
  let next = first <= last ? shaped(column[first]!, shape) : Number.NaN;
  for (let node = first; node <= last; node++) {
    // Across a segment's edge there is no neighbour: a crest may hide between the last sample and the edge.
    const left = node > first && !opensSegment(quadrature, node) ? here : Number.NaN;
    here = next;
    const ahead = node < last ? column[node + 1]! : Number.NaN;
    next = magnitude ? Math.abs(ahead) : sign * ahead;
    const right = node < last && !opensSegment(quadrature, node + 1) ? next : Number.NaN;
    // Comparisons with a missing neighbour (NaN) are false: an edge sample stays a candidate.
    if (Number.isNaN(here) || here < left || here < right) continue;
    const rise = Math.max(here - left, here - right);
    const bound = here + (Number.isNaN(rise) ? SAMPLING_LOSS * swing : rise / 2);
    if (bound < highest) continue;
    candidates.push({ node, bound });
    if (isPlateau) break;
  }
  // Of a plateau, whose samples differ by rounding only, the earliest.
  const level = (bound: number) => Math.round(bound / (ROUNDING * swing || 1));
  candidates.sort((a, b) => level(b.bound) - level(a.bound) || a.node - b.node);
  let result: Extremum | null = null;
  for (const { node, bound } of candidates) {
    if (result !== null && bound <= result.value + ROUNDING * swing) break;
    const crest = refine(quadrature, node, signal, shape, ta, tb);
    if (result === null || crest.value > result.value + ROUNDING * swing) result = crest;
  }
  return result;
}

/** What is the largest of: the signal, its negative, or its magnitude. */
export type Shape = 'largest' | 'smallest' | 'magnitude';

function shaped(value: number, shape: Shape): number {
  if (shape === 'magnitude') return Math.abs(value);
  return shape === 'smallest' ? -value : value;
}

/** True for the first node of a segment. */
function opensSegment(quadrature: Quadrature, node: number): boolean {
  if (node % NODES_PER_CELL !== 0) return false;
  const cell = node / NODES_PER_CELL;
  return quadrature.cellSegment[cell] !== quadrature.cellSegment[cell - 1];
}

/** Parabolic search between the neighbouring nodes; stays inside the segment, whose ends count too. */
function refine(
  quadrature: Quadrature,
  node: number,
  signal: Signal,
  shape: Shape,
  ta: number,
  tb: number,
): Extremum {
  const cell = Math.floor(node / NODES_PER_CELL);
  const segment = quadrature.cellSegment[cell]!;
  const from = Math.max(ta, segment.t0, quadrature.nodeTime[node - 1] ?? ta);
  const to = Math.min(tb, segment.t1, quadrature.nodeTime[node + 1] ?? tb);
  const f = (t: number): number => {
    // The neighbour may lie in the step before or after.
    let k = cell;
    while (t < quadrature.cellEdge[k]! && k > 0 && quadrature.cellSegment[k - 1] === segment) k--;
    while (t > quadrature.cellEdge[k + 1]! && quadrature.cellSegment[k + 1] === segment) k++;
    return shaped(signalIn(quadrature, k, signal, t), shape);
  };
  const crest = largestBetween(f, from, to, REFINED_WIDTH);
  return { value: crest.value, time: crest.x };
}
