import { GAUSS_POINTS } from '../numeric/gaussPoints.ts';
import { type Segment, stateBuffer } from '../simulate/segment.ts';
import type { Step } from '../simulate/step.ts';
import type { Trajectory } from '../simulate/trajectory.ts';
import {
  addRates,
  type Flows,
  finishRates,
  INTEGRANDS,
  type Integrand,
  newFlows,
  readFlows,
  SIGNALS,
  type Signal,
  signalOf,
} from './signals.ts';

/** Points per cell. */
export const NODES_PER_CELL = GAUSS_POINTS.length;

/**
 * Cells per supply period. Squared phase currents swing at twice the supply frequency, 180° a cell, whose integral
 * five points give to 1e-7 of its amplitude. The ledger of a 48-pole machine with little inertia, whose speed swings
 * with every torque pulse, closes to 2e-7 with four cells and to 6e-6 with three.
 */
const CELLS_PER_PERIOD = 4;

/**
 * A trajectory looked at in small cells: samples for extremes, cumulative integrals for energies and I²t. To be made once and handed on;
 * how it is laid out is no promise.
 */
export interface Quadrature {
  readonly trajectory: Trajectory;
  /**
   * How many cells there are.
   *
   * @internal
   */
  readonly cellCount: number;
  /**
   * Start of each cell, s, and the end of the last one.
   *
   * @internal
   */
  readonly cellEdge: Float64Array;
  /**
   * Segment of each cell.
   *
   * @internal
   */
  readonly cellSegment: readonly Segment[];
  /**
   * Integration step of each cell.
   *
   * @internal
   */
  readonly cellStep: readonly Step[];
  /**
   * Node times, `NODES_PER_CELL` a cell, s.
   *
   * @internal
   */
  readonly nodeTime: Float64Array;
  /**
   * Signals at the nodes, in the order of `nodeTime`, SI.
   *
   * @internal
   */
  readonly samples: Readonly<Record<Signal, Float64Array>>;
  /**
   * Integral from the start of the run to each cell edge, in the order of `cellEdge`, SI.
   *
   * @internal
   */
  readonly cumulative: Readonly<Record<Integrand, Float64Array>>;
  /**
   * Memory that reading an instant writes over.
   *
   * @internal
   */
  readonly scratch: Scratch;
}

/** Buffers for reading single instants, so that a search allocates nothing. */
interface Scratch {
  readonly y: Float64Array;
  readonly flows: Flows;
  readonly rates: Float64Array;
}

/** A stretch of time: its beginning and its end, in this order, s. */
export type Stretch = readonly [from: number, to: number];

/** A trajectory never changes, and heat, duties, energies and metrics all ask for it whole. */
const known = new WeakMap<Trajectory, Quadrature>();

/**
 * Evaluates a trajectory once at every Gauss node of every cell; asked again, gives the same.
 *
 * Source: the nodes are those of Gauss and Legendre (`numeric/gaussPoints.ts`).
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

/**
 * The same for a caller that takes numbers out of it and lets it go: it lies in memory that the next call writes over. A survey makes thousands,
 * and each would leave a megabyte behind.
 */
export function passingQuadrature(trajectory: Trajectory): Quadrature {
  return known.get(trajectory) ?? evaluated(trajectory, undefined, shared);
}

/** Blocks of memory by size needed, grown as it comes. */
interface Memory {
  nodes: Float64Array;
  sums: Float64Array;
}

const shared: Memory = { nodes: new Float64Array(0), sums: new Float64Array(0) };

function block(memory: Memory | null, of: keyof Memory, length: number): Float64Array {
  if (memory === null) return new Float64Array(length);
  if (memory[of].length < length) memory[of] = new Float64Array(Math.ceil(1.5 * length));
  return memory[of].fill(0, 0, length).subarray(0, length);
}

function evaluated(
  trajectory: Trajectory,
  fine?: readonly Stretch[],
  memory: Memory | null = null,
): Quadrature {
  const cells = cellsOf(trajectory, fine);
  const { cellSegment, cellStep, cellEdge } = cells;
  const cellCount = cellStep.length;
  const nodes = cellCount * NODES_PER_CELL;
  const nodeTime = new Float64Array(nodes);
  const samples = columns(SIGNALS, nodes, (length) => block(memory, 'nodes', length));
  const cumulative = columns(INTEGRANDS, cellCount + 1, (length) => block(memory, 'sums', length));
  const { iA, iB, iC, torque, speed, terminalVoltage, couplingTorque } = samples;
  const sums = INTEGRANDS.map((name) => cumulative[name]);
  const scratch: Scratch = {
    y: stateBuffer(),
    flows: newFlows(),
    rates: new Float64Array(INTEGRANDS.length),
  };
  const { y, flows, rates } = scratch;
  for (let k = 0; k < cellCount; k++) {
    const segment = cellSegment[k]!;
    const step = cellStep[k]!;
    const { kind } = segment;
    const t0 = cellEdge[k]!;
    const span = cellEdge[k + 1]! - t0;
    rates.fill(0);
    for (let j = 0; j < NODES_PER_CELL; j++) {
      const { x, w } = GAUSS_POINTS[j]!;
      const node = k * NODES_PER_CELL + j;
      const t = t0 + x * span;
      nodeTime[node] = t;
      readFlows(segment, step, t, y, flows);
      iA[node] = signalOf(flows, kind, 'iA');
      iB[node] = signalOf(flows, kind, 'iB');
      iC[node] = signalOf(flows, kind, 'iC');
      torque[node] = signalOf(flows, kind, 'torque');
      speed[node] = flows.omegaM;
      terminalVoltage[node] = signalOf(flows, kind, 'terminalVoltage');
      couplingTorque[node] = signalOf(flows, kind, 'couplingTorque');
      addRates(flows, w * span, rates);
    }
    finishRates(segment, rates);
    for (let r = 0; r < rates.length; r++) sums[r]![k + 1] = sums[r]![k]! + rates[r]!;
  }
  return { trajectory, cellCount, ...cells, nodeTime, samples, cumulative, scratch };
}

/** Cuts the steps of a trajectory into cells of equal length within each. */
function cellsOf(
  trajectory: Trajectory,
  fine?: readonly Stretch[],
): Pick<Quadrature, 'cellEdge' | 'cellSegment' | 'cellStep'> {
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
  return { cellEdge: Float64Array.from(edges), cellSegment, cellStep };
}

/** Columns of equal length in one block of memory. */
function columns<K extends string>(
  names: readonly K[],
  length: number,
  memory: (length: number) => Float64Array,
): Record<K, Float64Array> {
  const block = memory(names.length * length);
  return Object.fromEntries(
    names.map((name, i) => [name, block.subarray(i * length, (i + 1) * length)]),
  ) as Record<K, Float64Array>;
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
  const step = quadrature.cellStep[cell]!;
  if (signal === 'speed') return step.value(segment.model.size, t);
  const { y, flows } = quadrature.scratch;
  readFlows(segment, step, t, y, flows);
  return signalOf(flows, segment.kind, signal);
}

/**
 * Integral of one quantity over a stretch of the run.
 *
 * @param name of the quantity
 * @param ta beginning, s; moved to the nearer end of the run where it lies outside
 * @param tb end, s; likewise
 * @returns in the SI unit of the quantity times s
 */
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
  const { y, flows, rates } = quadrature.scratch;
  rates.fill(0);
  for (const { x, w } of GAUSS_POINTS) {
    readFlows(cellSegment[cell]!, cellStep[cell]!, t0 + x * span, y, flows);
    addRates(flows, w * span, rates);
  }
  finishRates(cellSegment[cell]!, rates);
  return cumulative[name][cell]! + rates[INTEGRANDS.indexOf(name)]!;
}
