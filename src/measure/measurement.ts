import type { RatedPoint } from '../machine/ratedPoint.ts';
import type { PhaseName } from '../scenario/scenario.ts';
import { DEFINITIONS } from './definitions.ts';
import type { Metric, MetricKey } from './metric.ts';
import type { Operations } from './operations.ts';
import type { Quadrature } from './quadrature.ts';

/** What every metric function may look at. */
export interface Measurement {
  readonly quadrature: Quadrature;
  readonly operations: Operations;
  readonly rated: RatedPoint;
}

/** A group of metrics: named pure functions of one measurement. */
export type MetricGroup = Partial<Record<MetricKey, Metric>>;

/** The phases in order. */
export const PHASE_NAMES: readonly PhaseName[] = ['A', 'B', 'C'];

/** A metric with a value. */
export function found(key: MetricKey, value: number, more: Partial<Metric> = {}): Metric {
  return { value, ...DEFINITIONS[key], ...more };
}

/** A metric that this run does not contain. */
export function missing(key: MetricKey, why: string): Metric {
  return { value: null, ...DEFINITIONS[key], missing: why };
}

/** Crest current at rated output, A. */
export function ratedCrest(rated: RatedPoint): number {
  return Math.SQRT2 * rated.current;
}

/**
 * The largest of the phases' results, with the phase; null when no phase has one.
 * @param of result of one phase, or null when it has none above `floor`, the best so far
 * @param first phase to begin with: the most promising one, so that the others have a high floor
 */
export function overPhases<T extends { readonly value: number }>(
  of: (phase: PhaseName, floor: number) => T | null,
  first: PhaseName,
): (T & { readonly phase: PhaseName }) | null {
  let best: (T & { readonly phase: PhaseName }) | null = null;
  for (const phase of [first, ...PHASE_NAMES.filter((name) => name !== first)]) {
    const result = of(phase, best?.value ?? Number.NEGATIVE_INFINITY);
    if (result !== null && (best === null || result.value > best.value)) best = { ...result, phase };
  }
  return best;
}
