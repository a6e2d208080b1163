import path from 'node:path';
import { buildSurveyFiles } from '../report/survey/buildSurveyFiles.ts';
import { renderSurveyTerminal } from '../report/survey/renderSurveyTerminal.ts';
import { surveyFindings } from '../report/survey/surveyFindings.ts';
import type { SurveyOptions } from '../report/survey/surveyOptions.ts';
import type { Survey } from '../survey/spec/survey.ts';
import type { RowSource } from '../survey/spread/rowSource.ts';
import type { CliIo } from './io.ts';
import { writeFiles } from './writeFiles.ts';

/** Writes tables and report of a survey and prints its summary. */
export function surveyFiles(
  survey: Survey,
  rows: RowSource,
  options: SurveyOptions,
  folder: string,
  io: CliIo,
): void {
  const findings = surveyFindings(survey, rows);
  const files = buildSurveyFiles(survey, rows, options, findings);
  writeFiles(folder, files, io);
  io.out(renderSurveyTerminal(survey, findings, options));
  const at = (ending: string) =>
    files.filter(({ name }) => name.endsWith(ending)).map(({ name }) => path.join(folder, name));
  io.out(`\nReport: ${at('.html').join(', ')}\nTables: ${[...at('.csv'), ...at('.parquet')].join(', ')}\n`);
}
