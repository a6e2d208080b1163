import { parseScenario } from '../estimate/parseScenario.ts';
import type { MetricKey } from '../measure/metric.ts';
import { simulate } from '../measure/simulate.ts';
import { scenarioOfRun } from '../survey/runs/scenarioOfRun.ts';
import type { Survey, SurveyRow } from '../survey/spec/survey.ts';
import type { RowSource } from '../survey/spread/rowSource.ts';
import { extremeOf } from '../survey/worst/extremeOf.ts';

/** The scenario in which the extreme was found, run once more by itself. */
export interface WorstCertificate {
  readonly row: SurveyRow;
  /** Text of the scenario file. */
  readonly text: string;
  /** Metrics whose value alone is not that of the survey, to the last bit. */
  readonly differing: readonly MetricKey[];
}

/** Runs the extreme of a search by itself, from the text a person would run; null where no run can be used. */
export function worstCertificate(survey: Survey, rows: RowSource): WorstCertificate | null {
  const extreme = extremeOf(survey, [...rows()]);
  if (extreme === null) return null;
  const { row } = extreme;
  const text = scenarioOfRun(survey, row.values);
  const { metrics } = simulate(parseScenario(text, { fileName: 'worst.yaml' }));
  const differing = survey.metrics.filter((key, index) => !Object.is(metrics[key].value, row.metrics[index]));
  return { row, text, differing };
}

/** The sought metric of the scenario as it was written, SI; null where that run has none or the survey seeks none. */
export function valueAsWritten({ base, task }: Survey): number | null {
  if (task.kind !== 'worst') return null;
  return simulate(parseScenario(base.text, { fileName: base.fileName })).metrics[task.metric].value;
}
