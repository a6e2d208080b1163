import type { Origin } from '../scenario/origin.ts';

/** A quantity of a nameplate that now has a value, and how far the machine may be from it. */
export interface Known {
  readonly value: number;
  readonly origin: Extract<Origin['origin'], 'given' | 'derived' | 'standard' | 'assumed'>;
  /** In words: "given", "IEC 60034-12, design N: at least", "assumed: typical". */
  readonly source: string;
  /**
   * value: the machine is to have it; least, most: a limit of a standard, which the machine keeps and need not reach.
   */
  readonly kind: 'value' | 'least' | 'most';
  /** Only of a limit: what catalogues usually state, and the logarithmic scatter of that. */
  readonly usual: { readonly value: number; readonly scatter: number } | null;
  /** Lowest and highest ratio of the machine's own value to this one: tolerance, band of a letter, or usual spread. */
  readonly range: readonly [low: number, high: number];
}

/** A value that stands on the nameplate. */
export function given(value: number, range: readonly [number, number]): Known {
  return { value, origin: 'given', source: 'given', kind: 'value', usual: null, range };
}

/** A value that stands in for what nobody wrote down. */
export function assumed(value: number, reason: string, range: readonly [number, number]): Known {
  return { value, origin: 'assumed', source: `assumed: ${reason}`, kind: 'value', usual: null, range };
}

/** A value computed from others. */
export function derived(value: number, reason: string, range: readonly [number, number]): Known {
  return { value, origin: 'derived', source: `derived: ${reason}`, kind: 'value', usual: null, range };
}

/**
 * A limit of a standard, from which motors keep a distance.
 *
 * @param factor what catalogues usually state against the limit
 */
export function limit(kind: 'least' | 'most', value: number, table: string, factor: number): Known {
  const { scatter, range } = kind === 'least' ? TORQUES : CURRENTS;
  const usual = { value: value * factor, scatter };
  return { value, origin: 'standard', source: `${table}: at ${kind}`, kind, usual, range };
}

/** Catalogue torques against the minima of the standards, currents against their maxima: common practice, no source. */
const TORQUES = { scatter: 0.15, range: [1, 1.6] } as const;
const CURRENTS = { scatter: 0.05, range: [0.7, 1] } as const;
