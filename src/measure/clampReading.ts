import { GAUSS_POINTS } from '../numeric/gaussPoints.ts';
import { largestBetween } from '../numeric/largestBetween.ts';
import { squared } from '../numeric/raised.ts';
import type { PhaseName } from '../scenario/scenario.ts';
import { PHASE_NAMES } from './measurement.ts';
import { cellAt, integral, NODES_PER_CELL, type Quadrature } from './quadrature.ts';

/** Time over which the inrush function of a clamp meter integrates, s. Common practice, no source. */
export const CLAMP_WINDOW = 0.1;

/** What a clamp meter shows at most, and where. */
export interface PhaseReading {
  /** A r.m.s. */
  readonly value: number;
  readonly phase: PhaseName;
  /** Beginning of the window that gives it, s. */
  readonly from: number;
  /** End of that window, s. */
  readonly to: number;
}

/** The largest readings of an operation. */
export interface ClampReading {
  /** A current transformer clamp: without the window's mean, which no transformer passes on. */
  readonly transformer: PhaseReading;
  /** A Hall clamp: with it. */
  readonly hall: PhaseReading;
}

/** How a clamp meter forms its reading of one window. */
export type ClampKind = keyof ClampReading;

/**
 * Largest reading of a clamp meter on any one line during an operation: the r.m.s. value over a window that slides through
 * [from, to],
 *
 *     Hall clamp             √( (1/T)·∫ i² dt )
 *     transformer clamp      √( (1/T)·∫ i² dt − ((1/T)·∫ i dt)² ),
 *
 * at its largest over the windows' positions and the three lines. The largest is found to a few 1e-5 of its value; its integrals
 * are those of the interpolant. An operation shorter than the window is read over one window that begins with it.
 *
 * @param from start of the operation, s
 * @param to its end, s
 * @param window T, s
 * @returns null where the run ends before one window is over: there is nothing to read
 */
export function clampReading(
  quadrature: Quadrature,
  from: number,
  to: number,
  window: number = CLAMP_WINDOW,
): ClampReading | null {
  const { tStart, tEnd } = quadrature.trajectory;
  const first = Math.max(from, tStart) + window;
  // A rounding must not take the only window away.
  if (first > tEnd * (1 + ROUNDING)) return null;
  const last = Math.max(first, Math.min(to, tEnd));
  const estimates = estimatesAt(quadrature, promisingEnds(quadrature, first, last, window), window);
  return {
    transformer: largestReading(quadrature, 'transformer', estimates, window),
    hall: largestReading(quadrature, 'hall', estimates, window),
  };
}

const ROUNDING = 1e-12;
/** Width at which the search for a window's best end stops, s: readings are flat to 1e-9 over it. */
const END_WIDTH = 1e-6;
/** What an estimate may be off, relative to the largest mean square. */
const ESTIMATE_ERROR = 2e-5;
const KINDS: readonly ClampKind[] = ['transformer', 'hall'];

/** Mean squares (A²) of windows by their ends, by kind and line A, B, C. */
interface Estimates {
  readonly ends: readonly number[];
  readonly values: Readonly<Record<ClampKind, readonly Float64Array[]>>;
}

function largestReading(
  quadrature: Quadrature,
  kind: ClampKind,
  { ends, values }: Estimates,
  window: number,
): PhaseReading {
  const crests = PHASE_NAMES.flatMap((phase, line) => crestsOf(phase, ends, values[kind][line]!));
  crests.sort((a, b) => b.bound - a.bound);
  let best: { readonly meanSquare: number; readonly phase: PhaseName; readonly end: number } | null = null;
  for (const { phase, bound, left, right } of crests) {
    if (best !== null && bound <= best.meanSquare * (1 + ESTIMATE_ERROR)) break;
    const exact = (end: number) => meanSquare(quadrature, kind, phase, end, window);
    const found =
      right > left ? largestBetween(exact, left, right, END_WIDTH) : { x: left, value: exact(left) };
    if (best === null || found.value > best.meanSquare)
      best = { meanSquare: found.value, phase, end: found.x };
  }
  const { meanSquare: square, phase, end } = best!;
  return { value: Math.sqrt(Math.max(0, square)), phase, from: end - window, to: end };
}

/** Square of the reading of the window that ends at `end`, A², its integrals formed anew from the interpolant. */
function meanSquare(
  quadrature: Quadrature,
  kind: ClampKind,
  phase: PhaseName,
  end: number,
  window: number,
): number {
  const start = end - window;
  const square = integral(quadrature, `i${phase}2`, start, end) / window;
  if (kind === 'hall') return square;
  return square - squared(integral(quadrature, `i${phase}`, start, end) / window);
}

interface Crest {
  readonly phase: PhaseName;
  /** What the mean square does not exceed here, A². */
  readonly bound: number;
  /** The window's end lies between these, s. */
  readonly left: number;
  readonly right: number;
}

/** Where the estimates stand above their neighbours; a smooth crest rises above its highest sample by less than half of that. */
function crestsOf(phase: PhaseName, ends: readonly number[], values: Float64Array): Crest[] {
  const crests: Crest[] = [];
  for (const [k, value] of values.entries()) {
    const before = values[k - 1] ?? value;
    const after = values[k + 1] ?? value;
    if (before > value || after > value) continue;
    const rise = value - Math.min(before, after);
    const left = ends[k - 1] ?? ends[k]!;
    crests.push({ phase, bound: value + rise / 2, left, right: ends[k + 1] ?? ends[k]! });
  }
  return crests;
}

/**
 * Ends of windows at which to estimate: every cell edge in [first, last] and both ends, and the nodes of those cells in which a
 * window may end that exceeds the best of these: it lies inside the cells it touches.
 */
function promisingEnds(quadrature: Quadrature, first: number, last: number, window: number): number[] {
  const { cellEdge, nodeTime, cumulative } = quadrature;
  const firstCell = cellAt(quadrature, first);
  const lastCell = cellAt(quadrature, last);
  const edges = [first, ...cellEdge.subarray(firstCell + 1, lastCell + 1), last];
  const coarse = ascending(edges, first, last);
  const { values } = estimatesAt(quadrature, coarse, window);
  const limit = Math.min(...KINDS.map((kind) => Math.max(...values[kind].map(largestOf))));
  const ends: number[] = [...coarse];
  for (let cell = firstCell; cell <= lastCell; cell++) {
    const back = cellAt(quadrature, cellEdge[cell]! - window);
    const bound = Math.max(
      ...PHASE_NAMES.map((phase) => cumulative[`i${phase}2`][cell + 1]! - cumulative[`i${phase}2`][back]!),
    );
    if (bound > limit * window)
      ends.push(...nodeTime.subarray(cell * NODES_PER_CELL, (cell + 1) * NODES_PER_CELL));
  }
  return ascending(ends, first, last);
}

function largestOf(values: Float64Array): number {
  return values.reduce((best, value) => Math.max(best, value), 0);
}

/** In order, without repetition, inside [first, last]. */
function ascending(times: readonly number[], first: number, last: number): number[] {
  const sorted = times.filter((t) => t >= first && t <= last).sort((a, b) => a - b);
  return sorted.filter((t, k) => k === 0 || t > sorted[k - 1]!);
}

/** Mean squares from the stored samples alone; inside a cell the current is that of the polynomial through its nodes. */
function estimatesAt(quadrature: Quadrature, ends: readonly number[], window: number): Estimates {
  const columns = () => PHASE_NAMES.map(() => new Float64Array(ends.length));
  const values = { transformer: columns(), hall: columns() };
  const [atEnd, atStart] = [new Float64Array(6), new Float64Array(6)];
  for (const [k, end] of ends.entries()) {
    sampledIntegrals(quadrature, end, atEnd);
    sampledIntegrals(quadrature, end - window, atStart);
    for (const line of [0, 1, 2] as const) {
      const square = (atEnd[line]! - atStart[line]!) / window;
      const mean = (atEnd[line + 3]! - atStart[line + 3]!) / window;
      values.hall[line]![k] = square;
      values.transformer[line]![k] = square - squared(mean);
    }
  }
  return { ends, values };
}

/** Integrals from the start of the run to t: ∫ i² of lines A, B, C, then ∫ i. */
function sampledIntegrals(quadrature: Quadrature, t: number, out: Float64Array): void {
  const { cellEdge, cumulative, samples } = quadrature;
  const cell = cellAt(quadrature, t);
  const edge = cellEdge[cell]!;
  const span = cellEdge[cell + 1]! - edge;
  const x = span > 0 ? Math.min(1, Math.max(0, (t - edge) / span)) : 0;
  for (const [line, phase] of PHASE_NAMES.entries()) {
    out[line] = cumulative[`i${phase}2`][cell]!;
    out[line + 3] = cumulative[`i${phase}`][cell]!;
  }
  if (x === 0) return;
  for (let j = 0; j < NODES_PER_CELL; j++) {
    const weight = span * integratedBasis(j, x);
    for (const [line, phase] of PHASE_NAMES.entries()) {
      const sample = samples[`i${phase}`][cell * NODES_PER_CELL + j]!;
      out[line]! += weight * sample * sample;
      out[line + 3]! += weight * sample;
    }
  }
}

/** Lagrange polynomials of the Gauss points on [0, 1], ascending coefficients. */
const BASIS: readonly (readonly number[])[] = GAUSS_POINTS.map(({ x: own }, j) =>
  GAUSS_POINTS.filter((_, k) => k !== j).reduce<number[]>(
    (coefficients, { x }) => {
      const scale = 1 / (own - x);
      const product = new Array<number>(coefficients.length + 1).fill(0);
      for (const [power, value] of coefficients.entries()) {
        product[power]! -= value * x * scale;
        product[power + 1]! += value * scale;
      }
      return product;
    },
    [1],
  ),
);

/** Integral of one Lagrange polynomial from 0 to x. */
function integratedBasis(j: number, x: number): number {
  return BASIS[j]!.reduceRight((sum, value, power) => (sum + value / (power + 1)) * x, 0);
}
