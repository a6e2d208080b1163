import { cellAt, NODES_PER_CELL, type Quadrature, signalIn } from './quadrature.ts';
import type { Signal } from './signals.ts';

/** Width to which a crossing is located, s. */
const CROSSING_WIDTH = 1e-12;

/**
 * Times inside (ta, tb) at which a signal passes a level upwards ('up'), downwards or either way, in order.
 * Signs are compared at the nodes and at the ends, then bisected on the interpolant.
 */
export function crossings(
  quadrature: Quadrature,
  signal: Signal,
  level: number,
  way: 'up' | 'down' | 'either',
  ta: number,
  tb: number,
): number[] {
  const { nodeTime } = quadrature;
  const read = (t: number) => signalIn(quadrature, cellAt(quadrature, t), signal, t) - level;
  const found: number[] = [];
  let time = ta;
  let value = read(ta);
  const visit = (t: number, next: number) => {
    const up = value < 0 && next >= 0;
    const down = value > 0 && next <= 0;
    if ((up && way !== 'down') || (down && way !== 'up')) found.push(bisectCrossing(read, time, t, up));
    time = t;
    if (next !== 0) value = next;
  };
  const first = cellAt(quadrature, ta) * NODES_PER_CELL;
  const last = (cellAt(quadrature, tb) + 1) * NODES_PER_CELL;
  const column = quadrature.samples[signal];
  for (let node = first; node < last; node++)
    if (nodeTime[node]! > ta && nodeTime[node]! < tb) visit(nodeTime[node]!, column[node]! - level);
  visit(tb, read(tb));
  return found;
}

function bisectCrossing(read: (t: number) => number, a: number, b: number, up: boolean): number {
  let left = a;
  let right = b;
  while (right - left > CROSSING_WIDTH) {
    const middle = (left + right) / 2;
    if (middle <= left || middle >= right) break;
    if (up ? read(middle) < 0 : read(middle) > 0) left = middle;
    else right = middle;
  }
  return right;
}
