import type { MetricKey } from '../../measure/metric.ts';
import type { Survey } from '../spec/survey.ts';
import { type Bounds, bootstrapped } from './bootstrap.ts';
import type { RowSource } from './rowSource.ts';
import { type SensitivityBlocks, sensitivityBlocks } from './sensitivityBlocks.ts';
import { type Indices, indicesOf } from './sensitivityIndices.ts';

/** Which fields the spread of each metric comes from. */
export interface Sensitivity {
  /** Number of blocks of fields + 2 runs that the survey asks for. */
  readonly samples: number;
  /** In the order of the survey's metrics. */
  readonly metrics: readonly MetricSensitivity[];
  /** How the indices and their intervals are found, in words. */
  readonly note: string;
}

/** Indices of one metric. */
export interface MetricSensitivity {
  readonly metric: MetricKey;
  /** Number of blocks of fields + 2 runs that are used. */
  readonly used: number;
  /** Number of blocks left out because a run in them has no value. */
  readonly leftOut: number;
  /** Of the metric over the draws, SI; null where no block is used. */
  readonly mean: number | null;
  /** Variance of the metric over the draws, in the square of its SI unit; null where no block is used. */
  readonly variance: number | null;
  /** Why there are no indices; null where there are. */
  readonly reason: string | null;
  /** In the order of the survey's fields. */
  readonly fields: readonly FieldSensitivity[];
  /** Sum of the first-order indices; null where there are none. */
  readonly sumOfFirst: SensitivityIndex | null;
  /** What that sum says, in words; empty where there is none. */
  readonly note: string;
}

/** One field's part in the variance of a metric. */
export interface FieldSensitivity {
  /** Path of the field. */
  readonly field: string;
  /** Share of the variance that would go if this field alone were fixed. */
  readonly first: SensitivityIndex | null;
  /**
   * Share that would be left if all other fields were fixed: what the field does alone and together with
   * others.
   */
  readonly total: SensitivityIndex | null;
}

/** An index and its interval of 95 % confidence; an estimate may lie a little below 0 or above 1. */
export interface SensitivityIndex extends Bounds {
  /** Share of the variance, 0 … 1 but for the error of the estimate. */
  readonly value: number;
}

/** Fewer blocks have no spread to speak of. Chosen. */
const LEAST_BLOCKS = 8;
/** Variation below this share of the values is that of rounded numbers. */
const ROUNDING = 1e-12;
/** A sum of first-order indices this near to 1 leaves nothing to joint effects worth naming. Chosen. */
const NEARLY_ALL = 0.95;

/**
 * First-order and total indices of each field for each metric, with intervals from a bootstrap over the
 * blocks, seeded with the survey's seed. Null for surveys that ask something else.
 *
 * Source: first-order indices as Saltelli and others, Computer Physics Communications 181 (2010) 259, total ones as
 * Jansen, Computer Physics Communications 117 (1999) 35, intervals as Archer, Saltelli and Sobol, J. Statist. Comput.
 * Simul. 58 (1997) 99.
 */
export function sensitivityOf(survey: Survey, rows: RowSource): Sensitivity | null {
  const { task } = survey;
  if (task.kind !== 'sensitivity') return null;
  const blocks = sensitivityBlocks(survey, task.samples, rows);
  const quasi =
    task.sequence === 'quasi'
      ? ' These are quasi-random, so that the intervals are as a rule on the wide side.'
      : '';
  return {
    samples: task.samples,
    metrics: blocks.map((taken, m) => metricSensitivity(survey, m, taken)),
    note:
      'First-order indices after Saltelli and others (2010), total ones after Jansen (1999); intervals of ' +
      `95 % by resampling whole blocks of runs, as if the blocks were independent draws.${quasi}`,
  };
}

function metricSensitivity(survey: Survey, m: number, blocks: SensitivityBlocks): MetricSensitivity {
  const { used, leftOut, values } = blocks;
  const metric = survey.metrics[m]!;
  const count = survey.fields.length;
  const all = used === 0 ? null : indicesOf(values, count);
  const common = { metric, used, leftOut, mean: all?.mean ?? null, variance: all?.variance ?? null };
  const reason = reasonAgainst(used, all);
  if (all === null || reason !== null) {
    const fields = survey.fields.map(({ path }) => ({ field: path, first: null, total: null }));
    return { ...common, reason, fields, sumOfFirst: null, note: '' };
  }
  const bounds = bootstrapped(values, count, survey.seed, m);
  const fields = survey.fields.map(({ path }, i) => ({
    field: path,
    first: { value: all.first[i]!, ...bounds.first[i]! },
    total: { value: all.total[i]!, ...bounds.total[i]! },
  }));
  const sum = all.first.reduce((total, index) => total + index, 0);
  return { ...common, reason: null, fields, sumOfFirst: { value: sum, ...bounds.sum }, note: noteOn(sum) };
}

function reasonAgainst(used: number, all: Indices | null): string | null {
  if (all === null || used < LEAST_BLOCKS)
    return `${used} blocks of runs have a value throughout; ${LEAST_BLOCKS} are needed`;
  const rounding = ROUNDING * all.largest;
  return all.variance <= rounding * rounding ? 'the value is the same in all draws' : null;
}

function noteOn(sum: number): string {
  const percent = `${(100 * sum).toFixed(0)} %`;
  if (sum > 1)
    return (
      `The first-order indices add up to ${percent}, more than the whole only by chance: ` +
      'the fields act nearly each by itself.'
    );
  if (sum >= NEARLY_ALL)
    return `The first-order indices add up to ${percent}: the fields act nearly each by itself.`;
  return (
    `The first-order indices add up to ${percent}; the rest of the variance comes from fields ` +
    'acting together, which the total indices count for each field concerned.'
  );
}
