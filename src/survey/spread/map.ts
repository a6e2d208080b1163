import type { MetricKey } from '../../measure/metric.ts';
import { isListed, listedCount, listedValue } from '../draws/listed.ts';
import type { RowVerdict, Survey, VariedField } from '../spec/survey.ts';
import { figureOf, type RowSource } from './rowSource.ts';
import { type VerdictLine, verdictLine } from './verdictChanges.ts';

/**
 * A sweep over two fields as tables: rows along the first field, columns along the second, both in the order
 * of their lists.
 */
export interface SurveyMap {
  readonly first: MapAxis;
  readonly second: MapAxis;
  /** In the order of the survey's metrics. */
  readonly tables: readonly MapTable[];
  /**
   * Verdict of each cell, null where there is none; null altogether where the survey takes no verdict down.
   */
  readonly verdicts: readonly (readonly (RowVerdict | null)[])[] | null;
  /**
   * One line per value of the second field, in the order of its list; null where the survey takes no verdict
   * down.
   */
  readonly lines: readonly VerdictLine[] | null;
}

/** The values of one field. */
export interface MapAxis {
  /** Path of the field. */
  readonly field: string;
  /** Unit of the field as the survey writes it. */
  readonly unit: string;
  /** In `unit`, in the order of the list. */
  readonly values: readonly number[];
}

/** One metric in each cell. */
export interface MapTable {
  readonly metric: MetricKey;
  /**
   * SI; cells[i][j] at value i of the first and j of the second field; null where the row is missing or has
   * no value.
   */
  readonly cells: readonly (readonly (number | null)[])[];
}

/**
 * The map of a sweep or a limit map over two fields; null for other surveys. Memory: one number per cell and
 * metric, because the tables are the answer.
 */
export function mapOf(survey: Survey, rows: RowSource): SurveyMap | null {
  const { task, fields } = survey;
  if ((task.kind !== 'sweep' && task.kind !== 'limitMap') || fields.length !== 2) return null;
  const [first, second] = [axisOf(fields[0]!), axisOf(fields[1]!)];
  if (first === null || second === null) return null;
  const [height, width] = [first.values.length, second.values.length];
  const cells = survey.metrics.map(() => emptyTable<number>(height, width));
  const verdicts = emptyTable<RowVerdict>(height, width);
  for (const row of rows()) {
    // The last field changes fastest.
    const j = row.run % width;
    const i = (row.run - j) / width;
    if (i >= height) continue;
    for (const [metric, table] of cells.entries()) table[i]![j] = figureOf(row, metric);
    verdicts[i]![j] = row.verdict;
  }
  const judged = survey.verdict || task.kind === 'limitMap';
  const column = (j: number) => verdicts.map((line) => line[j] ?? null);
  return {
    first,
    second,
    tables: cells.map((table, m) => ({ metric: survey.metrics[m]!, cells: table })),
    verdicts: judged ? verdicts : null,
    lines: judged ? second.values.map((at, j) => verdictLine(at, first.values, column(j))) : null,
  };
}

function axisOf({ path, unit, spread }: VariedField): MapAxis | null {
  if (!isListed(spread)) return null;
  const values = Array.from({ length: listedCount(spread) }, (_, index) => listedValue(spread, index));
  return { field: path, unit, values };
}

function emptyTable<T>(height: number, width: number): (T | null)[][] {
  return Array.from({ length: height }, () => new Array<T | null>(width).fill(null));
}
