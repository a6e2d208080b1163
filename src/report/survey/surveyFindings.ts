import type { Survey, SurveyRow } from '../../survey/spec/survey.ts';
import { mapOf, type SurveyMap } from '../../survey/spread/map.ts';
import type { RowSource } from '../../survey/spread/rowSource.ts';
import { type Sensitivity, sensitivityOf } from '../../survey/spread/sensitivity.ts';
import { type SurveySummary, summaryOf } from '../../survey/spread/summary.ts';
import { type Tornado, tornadoOf } from '../../survey/spread/tornado.ts';
import { extremeOf, type FoundExtreme } from '../../survey/worst/extremeOf.ts';
import { type BinnedField, binnedSpread } from './binnedSpread.ts';
import { type SweepCurve, sweepCurve } from './sweepFigure.ts';

/** Everything that a report on a survey shows, computed from its rows. */
export interface SurveyFindings {
  readonly summary: SurveySummary;
  readonly tornadoes: readonly Tornado[];
  readonly sensitivity: Sensitivity | null;
  readonly map: SurveyMap | null;
  readonly curve: SweepCurve | null;
  /** What a search found; null for other surveys and where no run can be used. */
  readonly extreme: FoundExtreme | null;
  /** Empty where a curve or a map shows the same better. */
  readonly binned: readonly BinnedField[];
  /** The rows of the runs that the tables name, by their numbers. */
  readonly named: ReadonlyMap<number, SurveyRow>;
}

/**
 * Everything that a report on a survey shows. Reads the rows some five times; memory does not grow with their number but
 * where they are the answer themselves.
 *
 * @throws RangeError where a reading of the rows gave other values than the one before
 */
export function surveyFindings(survey: Survey, rows: RowSource): SurveyFindings {
  const summary = summaryOf(survey, rows);
  const map = mapOf(survey, rows);
  const curve = sweepCurve(survey, rows);
  const extreme = survey.task.kind === 'worst' ? extremeOf(survey, [...rows()]) : null;
  return {
    summary,
    tornadoes: tornadoOf(survey, rows),
    sensitivity: sensitivityOf(survey, rows),
    map,
    curve,
    extreme,
    binned: map === null && curve === null && summary.runs > 1 ? binnedSpread(survey, summary, rows) : [],
    named: namedRows(summary, extreme, rows),
  };
}

function namedRows(
  summary: SurveySummary,
  extreme: FoundExtreme | null,
  rows: RowSource,
): Map<number, SurveyRow> {
  const wanted = new Set([
    ...summary.metrics.flatMap(({ smallest, largest }) => [smallest, largest]).map((value) => value?.run),
    extreme?.row.run,
  ]);
  const named = new Map<number, SurveyRow>();
  for (const row of rows()) if (wanted.has(row.run)) named.set(row.run, row);
  return named;
}
