import { runList } from '../../../../src/survey/draws/runList.ts';
import { runner } from '../../../../src/survey/runs/runner.ts';
import { readSurvey } from '../../../../src/survey/spec/readSurvey.ts';
import type { Survey, SurveyRow } from '../../../../src/survey/spec/survey.ts';
import { worstSearch } from '../../../../src/survey/worst/worstSearch.ts';

/** A survey of a scenario's text. */
export function surveyOn(scenario: string, survey: Readonly<Record<string, unknown>>): Survey {
  const source = JSON.stringify({ title: 'Real runs', scenario: 'base.yaml', ...survey });
  return readSurvey(source, { fileName: 'survey.yaml', scenarioText: () => scenario });
}

/** All runs of a survey, one after another. */
export function made(survey: Survey): SurveyRow[] {
  const run = runner(survey);
  if (survey.task.kind !== 'worst') {
    const { count, valuesOf } = runList(survey);
    return Array.from({ length: count }, (_, k) => run(k, valuesOf(k)));
  }
  const rows: SurveyRow[] = [];
  const search = worstSearch(survey);
  for (let batch = search.next(rows); batch !== null; batch = search.next(rows))
    for (const values of batch) rows.push(run(rows.length, values));
  return rows;
}
