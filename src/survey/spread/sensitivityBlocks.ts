import { sensitivityLayout } from '../draws/sensitivityLayout.ts';
import type { Survey } from '../spec/survey.ts';
import { figureOf, type RowSource } from './rowSource.ts';

/** The runs of one metric that indices are computed from. */
export interface SensitivityBlocks {
  /** Blocks of which every run has a value. */
  readonly used: number;
  /** Blocks that are left out, as runs in them are missing, did not end well or do not contain the metric. */
  readonly leftOut: number;
  /**
   * Block after block of `fields + 2` values: of draw A, of draw B, then of A with field i taken from B, i =
   * 0 … fields − 1. SI.
   */
  readonly values: Float64Array;
}

/**
 * Reads the blocks of a sensitivity survey. They are kept, because the bootstrap draws from them again and
 * again: samples · (fields + 2) numbers of 8 bytes per metric, 1 MB for 1024 samples of ten fields and ten
 * metrics. A run is recognised by its number, not by its place.
 *
 * @param survey its task is `sensitivity`
 * @returns one entry per metric
 */
export function sensitivityBlocks(survey: Survey, samples: number, rows: RowSource): SensitivityBlocks[] {
  const size = survey.fields.length + 2;
  const first = sensitivityLayout(survey.fields.length, samples).a(0);
  const all = survey.metrics.map(() => new Float64Array(samples * size).fill(Number.NaN));
  for (const row of rows())
    if (row.run >= first)
      for (const [metric, values] of all.entries())
        values[row.run - first] = figureOf(row, metric) ?? Number.NaN;
  return all.map((values) => {
    let used = 0;
    for (let block = 0; block < samples; block++) {
      const from = block * size;
      if (values.subarray(from, from + size).includes(Number.NaN)) continue;
      values.copyWithin(used * size, from, from + size);
      used++;
    }
    return { used, leftOut: samples - used, values: values.subarray(0, used * size) };
  });
}
