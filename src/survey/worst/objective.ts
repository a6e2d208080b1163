import type { Survey, SurveyRow } from '../spec/survey.ts';

/** What a row is worth in a worst-case survey. */
export interface Objective {
  /** The metric, SI; null where the row cannot be used. */
  readonly usable: (row: SurveyRow) => number | null;
  /** The lower, the nearer to what is sought; infinite where the row cannot be used. */
  readonly costOf: (row: SurveyRow) => number;
}

/**
 * What a worst-case survey seeks, as a cost to be made small.
 *
 * @throws RangeError when the survey asks something else or does not take its metric down
 */
export function objectiveOf({ task, metrics }: Pick<Survey, 'task' | 'metrics'>): Objective {
  if (task.kind !== 'worst') throw new RangeError(`a survey of kind ${task.kind} seeks no extreme`);
  const column = metrics.indexOf(task.metric);
  if (column < 0) throw new RangeError(`${task.metric} is sought but not among the survey's metrics`);
  const usable = (row: SurveyRow) => {
    const value = row.status === 'good' ? (row.metrics[column] ?? null) : null;
    return value !== null && Number.isFinite(value) ? value : null;
  };
  const { seek } = task;
  return {
    usable,
    costOf: (row) => {
      const value = usable(row);
      if (value === null) return Number.POSITIVE_INFINITY;
      if (seek === 'smallest') return value;
      return seek === 'largest' ? -value : -Math.abs(value);
    },
  };
}
