import { locate } from '../numeric/locate.ts';
import type { Extremum } from './extremum.ts';
import { cellAt, integral, NODES_PER_CELL, type Quadrature, signalIn } from './quadrature.ts';

/** Width to which the end of the worst period is located, s. */
const CREST_WIDTH = 1e-9;

/** Error of the coarse estimate of a window, relative; windows that cannot beat the best within it are not refined. */
const ESTIMATE_ERROR = 0.02;

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
  const squared = (t: number) => signalIn(quadrature, cellAt(quadrature, t), `i${phase}`, t) ** 2;
  const slope = (t: number) => squared(t) - squared(t - period);
  const coarse = coarseIntegral(quadrature, phase);
  const ends = [ta + period];
  const { cellEdge } = quadrature;
  for (let k = cellAt(quadrature, ta + period) + 1; k <= quadrature.cellCount && cellEdge[k]! < tb; k++)
    ends.push(cellEdge[k]!);
  ends.push(tb);
  const estimates = ends.map((t) => coarse(t) - coarse(t - period));
  const candidates = estimates
    .map((estimate, i) => ({ i, estimate }))
    .filter(({ i, estimate }) => !(estimate < estimates[i - 1]!) && !(estimate < estimates[i + 1]!))
    .sort((a, b) => b.estimate - a.estimate || a.i - b.i);
  let best: Extremum | null = null;
  for (const { i, estimate } of candidates) {
    if (estimate * (1 + ESTIMATE_ERROR) <= (best?.value ?? Math.max(0, floor) ** 2 * period)) break;
    const time = crestBetween(slope, ends[i - 1] ?? ends[i]!, ends[i + 1] ?? ends[i]!);
    const value = exact(time);
    if (best === null || value > best.value) best = { value, time };
  }
  if (best === null) return null;
  return { value: Math.sqrt(best.value / period), time: best.time };
}

/**
 * ∫i² from the nodes alone, linear between the midpoints of neighbouring nodes: good enough to pick the windows
 * worth an exact integral.
 */
function coarseIntegral(quadrature: Quadrature, phase: 'A' | 'B' | 'C'): (t: number) => number {
  const { nodeTime, samples, cellEdge, cumulative } = quadrature;
  const column = samples[`i${phase}`];
  const whole = cumulative[`i${phase}2`];
  return (t) => {
    const cell = cellAt(quadrature, t);
    if (t >= cellEdge[cell + 1]!) return whole[cell + 1]!;
    let sum = whole[cell]!;
    let from = cellEdge[cell]!;
    for (let j = 0; j < NODES_PER_CELL && from < t; j++) {
      const node = cell * NODES_PER_CELL + j;
      const next = j + 1 < NODES_PER_CELL ? (nodeTime[node]! + nodeTime[node + 1]!) / 2 : cellEdge[cell + 1]!;
      sum += column[node]! ** 2 * (Math.min(t, next) - from);
      from = next;
    }
    return sum;
  };
}

/**
 * Where the integral over a sliding period is largest in [from, to]: at the zero of its slope i²(t) − i²(t − T), or
 * at an end when the slope does not change sign.
 */
function crestBetween(slope: (t: number) => number, from: number, to: number): number {
  const atFrom = slope(from);
  const atTo = slope(to);
  if (atFrom > 0 && atTo < 0) return locate(slope, from, to, atFrom, atTo, CREST_WIDTH);
  return atFrom > 0 ? to : from;
}
