import type { MetricKey } from '../../../../src/measure/metric.ts';
import { runList } from '../../../../src/survey/draws/runList.ts';
import type { Survey, SurveyRow, SurveyTask, VariedField } from '../../../../src/survey/spec/survey.ts';

/** A survey of nothing in particular; only what statistics look at matters. */
export function syntheticSurvey(
  task: SurveyTask,
  fields: readonly VariedField[] = [uniform('supply.angle', 0, 1)],
  metrics: readonly MetricKey[] = ['plugPeakCurrent'],
  more: Partial<Survey> = {},
): Survey {
  const base = { fileName: 'none.yaml', text: '' };
  return {
    title: 'synthetic',
    description: '',
    base,
    fields,
    metrics,
    verdict: false,
    seed: 1,
    task,
    ...more,
  };
}

/** Draws of a field between two numbers without a unit. */
export function uniform(path: string, from: number, to: number): VariedField {
  return { path, unit: '', spread: { kind: 'uniform', from, to } };
}

/** A good row with one metric. */
export function rowOf(run: number, value: number | null, more: Partial<SurveyRow> = {}): SurveyRow {
  return { run, values: [run], status: 'good', reason: null, metrics: [value], verdict: null, ...more };
}

/** The rows of a survey whose one metric is a function of the fields. */
export function computedRows(survey: Survey, f: (values: readonly number[]) => number): SurveyRow[] {
  const { count, valuesOf } = runList(survey);
  return Array.from({ length: count }, (_, run) => {
    const values = valuesOf(run);
    return { ...rowOf(run, f(values)), values };
  });
}
