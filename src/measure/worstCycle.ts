import { locate } from '../numeric/locate.ts';
import { squared } from '../numeric/raised.ts';
import type { Extremum } from './extremum.ts';
import { cellAt, integral, NODES_PER_CELL, type Quadrature, signalIn } from './quadrature.ts';

/** Width to which the end of the worst period is located, s. */
const CREST_WIDTH = 1e-9;
/**
 * How far a window may lie off the estimates at the neighbouring points, relative: the estimates' own error and what is
 * gained between two points. Windows that cannot beat the best within it are not refined.
 */
const ESTIMATE_ERROR = 0.05;

/**
 * Largest r.m.s. value of one phase current over any one supply period that lies inside [ta, tb], with the end of
 * that period. Null when the interval is shorter than a period, or no period is above the floor (A).
 */
export function worstCycle(
  quadrature: Quadrature,
  phase: 'A' | 'B' | 'C',
  ta: number,
  tb: number,
  floor = Number.NEGATIVE_INFINITY,
): Extremum | null {
  const period = 1 / quadrature.trajectory.scenario.supply.frequency;
  if (tb - ta < period) return null;
  const name = `i${phase}2` as const;
  const exact = (t: number) => integral(quadrature, name, t - period, t);
  const square = (t: number) => squared(signalIn(quadrature, cellAt(quadrature, t), `i${phase}`, t));
  const slope = (t: number) => square(t) - square(t - period);
  let best: Extremum | null = null;
  for (const { from, to, bound } of promisingEnds(quadrature, phase, ta + period, tb, floor)) {
    if (best !== null && bound <= best.value) break;
    const times = crestsBetween(slope, from, to);
    // The integral may be largest where the search begins or ends.
    if (from === ta + period) times.push(from);
    if (to === tb) times.push(to);
    for (const time of times) {
      const value = exact(time);
      if (best === null || value > best.value) best = { value, time };
    }
  }
  if (best === null) return null;
  return { value: Math.sqrt(best.value / period), time: best.time };
}

interface Stretch {
  readonly from: number;
  readonly to: number;
  /** What ∫i² over a period that ends in this stretch cannot exceed, A²·s. */
  readonly bound: number;
}

/**
 * Stretches of [from, tb], at most 1/11 period long, in which the period with the largest ∫i² may end; the most promising
 * first. Whole cells decide first: a period lies inside the cells it touches and contains those it covers.
 */
function promisingEnds(
  quadrature: Quadrature,
  phase: 'A' | 'B' | 'C',
  from: number,
  tb: number,
  floor: number,
): Stretch[] {
  const { nodeTime, cellEdge, cumulative } = quadrature;
  const period = 1 / quadrature.trajectory.scenario.supply.frequency;
  const whole = cumulative[`i${phase}2`];
  const first = cellAt(quadrature, from);
  const last = cellAt(quadrature, tb);
  let limit = squared(Math.max(0, floor)) * period;
  let back = cellAt(quadrature, from - period);
  const upper = new Float64Array(last - first + 1);
  for (let cell = first; cell <= last; cell++) {
    while (cellEdge[back + 1]! <= cellEdge[cell]! - period) back++;
    upper[cell - first] = whole[cell + 1]! - whole[back]!;
    if (cellEdge[cell]! >= from && cellEdge[cell]! <= tb)
      limit = Math.max(limit, whole[cell]! - whole[back + 1]!);
  }
  const estimate = (t: number) =>
    roughIntegral(quadrature, phase, t) - roughIntegral(quadrature, phase, t - period);
  const stretches: Stretch[] = [];
  for (let cell = first; cell <= last; cell++) {
    if (upper[cell - first]! <= limit) continue;
    let left = Math.max(from, cellEdge[cell]!);
    let atLeft = estimate(left);
    for (let j = 1; j <= NODES_PER_CELL; j++) {
      const node = cell * NODES_PER_CELL + j;
      const edge = j < NODES_PER_CELL ? (nodeTime[node - 1]! + nodeTime[node]!) / 2 : cellEdge[cell + 1]!;
      const right = Math.min(edge, tb);
      if (right <= left) continue;
      const atRight = estimate(right);
      const bound = Math.max(atLeft, atRight) * (1 + ESTIMATE_ERROR);
      if (bound > limit) stretches.push({ from: left, to: right, bound });
      left = right;
      atLeft = atRight;
    }
  }
  return stretches.sort((a, b) => b.bound - a.bound || a.from - b.from);
}

/** ∫i² from the start of the run to t, the current inside the last cell taken as constant around each node, A²·s. */
function roughIntegral(quadrature: Quadrature, phase: 'A' | 'B' | 'C', t: number): number {
  const { nodeTime, samples, cellEdge, cumulative } = quadrature;
  const column = samples[`i${phase}`];
  const cell = cellAt(quadrature, t);
  let sum = cumulative[`i${phase}2`][cell]!;
  let at = cellEdge[cell]!;
  for (let j = 0; j < NODES_PER_CELL && at < t; j++) {
    const node = cell * NODES_PER_CELL + j;
    const next = j + 1 < NODES_PER_CELL ? (nodeTime[node]! + nodeTime[node + 1]!) / 2 : cellEdge[cell + 1]!;
    sum += squared(column[node]!) * (Math.min(t, next) - at);
    at = next;
  }
  return sum;
}

/**
 * Where the integral over a sliding period has a crest in [from, to]: where its slope i²(t) − i²(t − T) falls through
 * zero. The slope swings at the supply frequency and its double; between points 1/22 period apart it falls through zero
 * once at most.
 */
function crestsBetween(slope: (t: number) => number, from: number, to: number): number[] {
  const middle = (from + to) / 2;
  const [a, b, c] = [slope(from), slope(middle), slope(to)];
  const crests: number[] = [];
  if (a > 0 && b <= 0) crests.push(locate(slope, from, middle, a, b, CREST_WIDTH));
  if (b > 0 && c <= 0) crests.push(locate(slope, middle, to, b, c, CREST_WIDTH));
  return crests;
}
