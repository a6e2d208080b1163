/** Quantile at which the fields of the tornado stay that do not move. */
export const MEDIAN_QUANTILE = 0.5;
/** Quantile of the low bar of the tornado. */
export const LOW_QUANTILE = 0.1;
/** Quantile of the high bar of the tornado. */
export const HIGH_QUANTILE = 0.9;
/** Runs of a sample besides those with one field exchanged: A and B. */
const BASE_RUNS = 2;

/** What a run of a sensitivity survey is for. */
export type SensitivityRole =
  /** All fields at their medians. */
  | { readonly kind: 'median' }
  /** One field at its low or high quantile, the others at their medians. */
  | { readonly kind: 'low' | 'high'; readonly field: number }
  /** The independent draws A and B of a sample. */
  | { readonly kind: 'a' | 'b'; readonly sample: number }
  /** A with one field from B. */
  | { readonly kind: 'exchanged'; readonly sample: number; readonly field: number };

/** Which run is which in a sensitivity survey. Fields and samples are counted from 0. */
export interface SensitivityLayout {
  readonly count: number;
  /** Number of the run with all fields at their medians. */
  readonly median: number;
  /** Number of the run with this field at its low quantile. */
  readonly low: (field: number) => number;
  /** Number of the run with this field at its high quantile. */
  readonly high: (field: number) => number;
  /** Number of the run with draw A of this sample. */
  readonly a: (sample: number) => number;
  /** Number of the run with draw B of this sample. */
  readonly b: (sample: number) => number;
  /** Number of the run with draw A of this sample, but this field from B. */
  readonly exchanged: (sample: number, field: number) => number;
  /** What run `run` is for: the way back. */
  readonly roleOf: (run: number) => SensitivityRole;
}

/**
 * The order of the runs of a sensitivity survey: the tornado (median; low and high of each field), then for
 * each sample A, B and A with each field from B (radial sampling: Saltelli and others, Variance based
 * sensitivity analysis of model output, Computer Physics Communications 181 (2010), 259-270).
 *
 * @param fields number of varied fields
 * @param samples number of samples
 */
export function sensitivityLayout(fields: number, samples: number): SensitivityLayout {
  const tornado = 1 + 2 * fields;
  const block = fields + BASE_RUNS;
  const a = (sample: number) => tornado + sample * block;
  return {
    count: tornado + samples * block,
    median: 0,
    low: (field) => 1 + 2 * field,
    high: (field) => 2 + 2 * field,
    a,
    b: (sample) => a(sample) + 1,
    exchanged: (sample, field) => a(sample) + BASE_RUNS + field,
    roleOf: (run) => {
      if (run === 0) return { kind: 'median' };
      if (run < tornado) return { kind: run % 2 === 1 ? 'low' : 'high', field: Math.floor((run - 1) / 2) };
      const place = (run - tornado) % block;
      const sample = (run - tornado - place) / block;
      if (place < BASE_RUNS) return { kind: place === 0 ? 'a' : 'b', sample };
      return { kind: 'exchanged', sample, field: place - BASE_RUNS };
    },
  };
}
