import { GAUSS_POINTS } from '../numeric/gaussPoints.ts';
import type { Step } from '../simulate/odexAdapter.ts';
import { type Instant, observeAt, type Segment } from '../simulate/segment.ts';
import { newInstant, type Trajectory } from '../simulate/trajectory.ts';
import { INTEGRANDS, type Integrand, SIGNALS, type Signal, writeRates, writeSignals } from './signals.ts';

/** Points per cell. */
export const NODES_PER_CELL = GAUSS_POINTS.length;

/**
 * Cells per supply period. Squared phase currents swing at twice the supply frequency, 180° a cell, whose integral
 * five points give to 1e-7 of its amplitude. The ledger of a 48-pole machine with little inertia, whose speed swings
 * with every torque pulse, closes to 2e-7 with four cells and to 6e-6 with three.
 */
const CELLS_PER_PERIOD = 4;

/** A trajectory looked at in small cells: samples for extremes, cumulative integrals for energies and I²t. */
export interface Quadrature {
  readonly trajectory: Trajectory;
  readonly cellCount: number;
  /** Start of each cell, s, and the end of the last one. */
  readonly cellEdge: Float64Array;
  readonly cellSegment: readonly Segment[];
  readonly cellStep: readonly Step[];
  /** Node times, `NODES_PER_CELL` a cell. */
  readonly nodeTime: Float64Array;
  /** Signals at the nodes. */
  readonly samples: Readonly<Record<Signal, Float64Array>>;
  /** Integral from the start of the run to each cell edge. */
  readonly cumulative: Readonly<Record<Integrand, Float64Array>>;
  readonly scratch: Scratch;
}

/** Buffers for reading single instants, so that a search allocates nothing. */
interface Scratch {
  readonly y: number[];
  readonly at: Instant;
  readonly rates: Float64Array;
  readonly signals: Float64Array;
}

/** A stretch of time, s. */
export type Stretch = readonly [from: number, to: number];

/** A trajectory never changes, and heat, duties, energies and metrics all ask for it whole. */
const known = new WeakMap<Trajectory, Quadrature>();

/**
 * Evaluates a trajectory once at every Gauss node of every cell; asked again, gives the same.
 *
 * @param fine stretches that are all that will be looked at: elsewhere every integration step is one cell, which is quick and too coarse
 * for crests and charges; left out: everything is fine
 */
export function quadratureOf(trajectory: Trajectory, fine?: readonly Stretch[]): Quadrature {
  const whole = known.get(trajectory);
  if (whole !== undefined) return whole;
  const quadrature = evaluated(trajectory, fine);
  if (fine === undefined) known.set(trajectory, quadrature);
  return quadrature;
}

function evaluated(trajectory: Trajectory, fine?: readonly Stretch[]): Quadrature {
  const width = 1 / trajectory.scenario.supply.frequency / CELLS_PER_PERIOD;
  const edges: number[] = [];
  const cellSegment: Segment[] = [];
  const cellStep: Step[] = [];
  for (const segment of trajectory.segments)
    for (const step of segment.steps) {
      const looked = fine === undefined || fine.some(([from, to]) => step.t1 > from && step.t0 < to);
      const count = looked ? Math.max(1, Math.ceil((step.t1 - step.t0) / width)) : 1;
      for (let i = 0; i < count; i++) {
        edges.push(step.t0 + (i * (step.t1 - step.t0)) / count);
        cellSegment.push(segment);
        cellStep.push(step);
      }
    }
  edges.push(trajectory.tEnd);
  const cellCount = cellStep.length;
  const cellEdge = Float64Array.from(edges);
  const nodeTime = new Float64Array(cellCount * NODES_PER_CELL);
  const samples = SIGNALS.map(() => new Float64Array(cellCount * NODES_PER_CELL));
  const cumulative = INTEGRANDS.map(() => new Float64Array(cellCount + 1));
  const scratch: Scratch = {
    y: [],
    at: newInstant(),
    rates: new Float64Array(INTEGRANDS.length),
    signals: new Float64Array(SIGNALS.length),
  };
  const { y, at, rates, signals } = scratch;
  const sums = new Float64Array(INTEGRANDS.length);
  for (let k = 0; k < cellCount; k++) {
    const t0 = cellEdge[k]!;
    const span = cellEdge[k + 1]! - t0;
    for (let j = 0; j < NODES_PER_CELL; j++) {
      const { x, w } = GAUSS_POINTS[j]!;
      const node = k * NODES_PER_CELL + j;
      nodeTime[node] = t0 + x * span;
      observeAt(cellSegment[k]!, cellStep[k]!, t0 + x * span, y, at);
      writeSignals(cellSegment[k]!, at, signals);
      for (let s = 0; s < samples.length; s++) samples[s]![node] = signals[s]!;
      writeRates(cellSegment[k]!, at, rates);
      for (let r = 0; r < rates.length; r++) sums[r]! += w * span * rates[r]!;
    }
    for (let r = 0; r < rates.length; r++) cumulative[r]![k + 1] = sums[r]!;
  }
  return {
    trajectory,
    cellCount,
    cellEdge,
    cellSegment,
    cellStep,
    nodeTime,
    samples: named(SIGNALS, samples),
    cumulative: named(INTEGRANDS, cumulative),
    scratch,
  };
}

function named<K extends string>(
  names: readonly K[],
  columns: readonly Float64Array[],
): Record<K, Float64Array> {
  return Object.fromEntries(names.map((name, i) => [name, columns[i]!])) as Record<K, Float64Array>;
}

/** Index of the cell that contains t (the later one at an edge). */
export function cellAt(quadrature: Quadrature, t: number): number {
  let low = 0;
  let high = quadrature.cellCount - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (quadrature.cellEdge[middle]! <= t) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Signal at time t, read in the step that a given cell belongs to. */
export function signalIn(quadrature: Quadrature, cell: number, signal: Signal, t: number): number {
  const segment = quadrature.cellSegment[cell]!;
  const { y, at, signals } = quadrature.scratch;
  observeAt(segment, quadrature.cellStep[cell]!, t, y, at);
  writeSignals(segment, at, signals);
  return signals[SIGNALS.indexOf(signal)]!;
}

/** Integral of one quantity from ta to tb; limits outside the run are moved to its ends. SI. */
export function integral(quadrature: Quadrature, name: Integrand, ta: number, tb: number): number {
  return integralTo(quadrature, name, tb) - integralTo(quadrature, name, ta);
}

function integralTo(quadrature: Quadrature, name: Integrand, t: number): number {
  const { cellEdge, cellSegment, cellStep, cumulative } = quadrature;
  const cell = cellAt(quadrature, t);
  const t0 = cellEdge[cell]!;
  const span = t - t0;
  if (span <= 0) return cumulative[name][cell]!;
  if (t >= cellEdge[cell + 1]!) return cumulative[name][cell + 1]!;
  const { y, at, rates } = quadrature.scratch;
  const index = INTEGRANDS.indexOf(name);
  let sum = cumulative[name][cell]!;
  for (const { x, w } of GAUSS_POINTS) {
    observeAt(cellSegment[cell]!, cellStep[cell]!, t0 + x * span, y, at);
    writeRates(cellSegment[cell]!, at, rates);
    sum += w * span * rates[index]!;
  }
  return sum;
}
