/** A figure of the phase-variable model; null where the run does not contain it. */
export interface IndependentMetric {
  readonly value: number | null;
  readonly time?: number;
  readonly phase?: 'A' | 'B' | 'C';
}

export type IndependentMetrics = Record<string, IndependentMetric>;
