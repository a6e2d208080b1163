import type { SurveyRow } from '../spec/survey.ts';

/**
 * Rows of a survey in the order of their runs, some of which may be missing. Each call begins anew with the
 * same rows.
 */
export type RowSource = () => Iterable<SurveyRow>;

/** A figure of a row that can be used; null where the run did not end well or does not contain it. */
export function figureOf(row: SurveyRow, metric: number): number | null {
  const value = row.status === 'good' ? row.metrics[metric] : null;
  return value !== null && value !== undefined && Number.isFinite(value) ? value : null;
}
