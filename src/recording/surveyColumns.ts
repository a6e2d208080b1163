import { DEFINITIONS } from '../measure/definitions.ts';
import type { Survey } from '../survey/spec/survey.ts';

/** A column of a survey's table. */
export interface SurveyColumn {
  readonly name: string;
  /** As written in the survey for a field, SI for a metric; empty for text and plain numbers. */
  readonly unit: string;
  /** What stands in it, in words. */
  readonly description: string;
}

/** Number of the run. */
export const RUN_COLUMN: SurveyColumn = {
  name: 'run',
  unit: '',
  description: "Number of the run in the survey's list, from 0.",
};
/** How the run ended. */
export const STATUS_COLUMN: SurveyColumn = {
  name: 'status',
  unit: '',
  description:
    'good: the figures can be used; refused: no scenario has these values; failed: the run ended badly; unbalanced: its energy balance does not close.',
};
/** Why the figures cannot be used. */
export const REASON_COLUMN: SurveyColumn = {
  name: 'reason',
  unit: '',
  description: 'Why the figures of the run cannot be used; empty where they can.',
};
/** The verdict. */
export const VERDICT_COLUMN: SurveyColumn = {
  name: 'verdict',
  unit: '',
  description: 'suitable, notSuitable or notJudged; empty where no verdict was asked for or possible.',
};
/** What decides the verdict. */
export const DECISIVE_COLUMN: SurveyColumn = {
  name: 'decisive',
  unit: '',
  description: 'Keys of the criteria that decide the verdict, with blanks between them.',
};

/** Columns of the varied fields. */
export function fieldColumns(survey: Survey): SurveyColumn[] {
  return survey.fields.map(({ path, unit }) => ({
    name: path,
    unit,
    description: `Varied number of the scenario: ${path}.`,
  }));
}

/** Columns of the metrics. */
export function metricColumns(survey: Survey): SurveyColumn[] {
  return survey.metrics.map((key) => {
    const { unit, definition } = DEFINITIONS[key];
    return { name: key, unit: unit === '1' ? '' : unit, description: definition };
  });
}

/** Name and unit in one: "load.inertia [kg m^2]". */
export function columnHead({ name, unit }: SurveyColumn): string {
  return unit === '' ? name : `${name} [${unit}]`;
}
