import { PHASE_NAMES } from '../../measure/measurement.ts';
import { cellAt, integral, type Quadrature } from '../../measure/quadrature.ts';
import { exponential, exponentialLessOne } from '../../numeric/exponential.ts';
import { squared } from '../../numeric/raised.ts';
import type { Window } from '../heat/operationWindows.ts';
import type { RelayStretch } from './stopsUntilTrip.ts';

/**
 * What an overload relay sees of a stretch of a run. Within a cell of a quarter supply period the weight e^(−t/τ) counts as
 * constant at its middle: the error is below (Δ/τ)², 1e-9 for the shortest time constant.
 *
 * @param tau of the relay, s
 */
export function relayStretch(quadrature: Quadrature, { from, to }: Window, tau: number): RelayStretch {
  const { cellEdge } = quadrature;
  const sums: [number, number, number] = [0, 0, 0];
  const last = cellAt(quadrature, to);
  for (let cell = cellAt(quadrature, from); cell <= last; cell++) {
    const a = Math.max(from, cellEdge[cell]!);
    const b = Math.min(to, cellEdge[cell + 1]!);
    if (b <= a) continue;
    const weight = exponential(-(to - (a + b) / 2) / tau);
    for (const [phase, name] of PHASE_NAMES.entries())
      sums[phase as 0 | 1 | 2] += weight * integral(quadrature, `i${name}2`, a, b);
  }
  return { duration: to - from, weighted: sums };
}

/** The same of a steady current, A r.m.s., over a time, s; without current a pause. */
export function steadyStretch(current: number, duration: number, tau: number): RelayStretch {
  const weighted = squared(current) * tau * -exponentialLessOne(-duration / tau);
  return { duration, weighted: [weighted, weighted, weighted] };
}
