import type { Survey, SurveyRow } from '../survey/spec/survey.ts';
import type { RowSource } from '../survey/spread/rowSource.ts';
import { csvNumber, csvText } from './csvText.ts';
import {
  columnHead,
  DECISIVE_COLUMN,
  fieldColumns,
  metricColumns,
  REASON_COLUMN,
  RUN_COLUMN,
  STATUS_COLUMN,
  VERDICT_COLUMN,
} from './surveyColumns.ts';

/**
 * The rows of a survey as RFC 4180 text in pieces, a line each: fields in the units of the survey, metrics
 * in SI, numbers the shortest that
 * read back as the same, nothing where there is no value. The two columns of the verdict are there where
 * one was asked for. A text that a
 * spreadsheet would take for a formula begins with an apostrophe.
 */
export function* surveyCsv(survey: Survey, rows: RowSource): Iterable<string> {
  const head = [
    RUN_COLUMN,
    ...fieldColumns(survey),
    STATUS_COLUMN,
    REASON_COLUMN,
    ...metricColumns(survey),
    ...(survey.verdict ? [VERDICT_COLUMN, DECISIVE_COLUMN] : []),
  ];
  yield line(head.map((column) => csvText(columnHead(column))));
  for (const row of rows()) yield line(cellsOf(row, survey.verdict));
}

function cellsOf({ run, values, status, reason, metrics, verdict }: SurveyRow, judged: boolean): string[] {
  return [
    String(run),
    ...values.map(csvNumber),
    status,
    csvText(reason ?? ''),
    ...metrics.map(csvNumber),
    ...(judged ? [verdict?.outcome ?? '', csvText(verdict?.decisive ?? '')] : []),
  ];
}

function line(cells: readonly string[]): string {
  return `${cells.join(',')}\r\n`;
}
