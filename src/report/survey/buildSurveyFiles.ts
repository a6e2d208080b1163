import { surveyCsv } from '../../recording/surveyCsv.ts';
import { surveyParquet } from '../../recording/surveyParquet.ts';
import type { Survey } from '../../survey/spec/survey.ts';
import type { RowSource } from '../../survey/spread/rowSource.ts';
import { surveyPage } from './renderSurveyHtml.ts';
import { type SurveyFindings, surveyFindings } from './surveyFindings.ts';
import type { SurveyOptions } from './surveyOptions.ts';

/**
 * One file of a survey's folder; the tables come in pieces, to be written one after another, and read the
 * rows as they are taken.
 */
export interface SurveyFile {
  readonly name: string;
  /** Text, or pieces of text or of bytes to be written one after another. */
  readonly content: string | Iterable<string> | Iterable<Uint8Array>;
}

/**
 * All files of a survey's folder: both tables and the report. Without any row there is no Parquet file.
 *
 * @param findings where they are computed already
 * @throws RangeError where a reading of the rows gave other values than the one before
 */
export function buildSurveyFiles(
  survey: Survey,
  rows: RowSource,
  options: SurveyOptions,
  findings: SurveyFindings = surveyFindings(survey, rows),
): SurveyFile[] {
  return [
    { name: 'survey.html', content: surveyPage(survey, findings, options) },
    { name: 'survey.csv', content: surveyCsv(survey, rows) },
    ...(findings.summary.runs === 0
      ? []
      : [{ name: 'survey.parquet', content: surveyParquet(survey, rows) }]),
  ];
}
