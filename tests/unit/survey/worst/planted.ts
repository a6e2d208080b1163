import type { Survey, SurveyRow, VariedField } from '../../../../src/survey/spec/survey.ts';
import { extremeOf } from '../../../../src/survey/worst/extremeOf.ts';
import { worstSearch } from '../../../../src/survey/worst/worstSearch.ts';

/** A metric as a function of the fields' values; null: such a run is refused. */
export type PlantedMetric = (values: readonly number[]) => number | null;

type Seek = 'largest' | 'smallest' | 'largestMagnitude';

/** A field with a range. */
export function ranged(from: number, to: number, unit = ''): VariedField {
  return { path: 'load.inertia', unit, spread: { kind: 'uniform', from, to } };
}

/** Fields with equal ranges. */
export function ranges(count: number, from: number, to: number): VariedField[] {
  return Array.from({ length: count }, () => ranged(from, to));
}

/** A worst-case survey over planted fields. */
export function worstSurvey(
  fields: readonly VariedField[],
  runs: number,
  seed = 1,
  seek: Seek = 'smallest',
): Survey {
  return {
    title: 'Planted',
    description: '',
    base: { fileName: 'planted.yaml', text: '' },
    fields,
    metrics: ['stopTimeFromTouch', 'plugMinimumTorque'],
    verdict: false,
    seed,
    task: { kind: 'worst', metric: 'plugMinimumTorque', seek, runs },
  };
}

/** The row of a planted run. */
export function rowOf(run: number, values: readonly number[], metric: PlantedMetric): SurveyRow {
  const value = metric(values);
  return {
    run,
    values,
    status: value === null ? 'refused' : 'good',
    reason: value === null ? 'planted' : null,
    metrics: [null, value],
    verdict: null,
  };
}

/** Rows and sizes of the batches of a whole search. */
export function searched(survey: Survey, metric: PlantedMetric): { rows: SurveyRow[]; sizes: number[] } {
  const search = worstSearch(survey);
  const rows: SurveyRow[] = [];
  const sizes: number[] = [];
  for (let batch = search.next(rows); batch !== null; batch = search.next(rows)) {
    sizes.push(batch.length);
    rows.push(...batch.map((values, i) => rowOf(rows.length + i, values, metric)));
  }
  return { rows, sizes };
}

/** The extreme that a search finds. */
export function foundIn(survey: Survey, metric: PlantedMetric) {
  return extremeOf(survey, searched(survey, metric).rows)!;
}
