import type { MetricKey } from '../../measure/metric.ts';
import { valueAt } from '../../scenario/place.ts';
import type { Report } from './report.ts';
import type { SurveyTask } from './survey.ts';
import { type AskWord, DEFAULT_SEQUENCE } from './surveyInput.ts';
import type { WrittenSurvey } from './writtenSurvey.ts';

/** What is taken down where a survey does not say: braking, its peak, how long it takes and what it heats. */
export const DEFAULT_METRICS: readonly MetricKey[] = [
  'plugMinimumTorque',
  'plugPeakCurrent',
  'stopTimeFromTouch',
  'plugRotorHeat',
  'stopRevolutions',
];

/**
 * What is taken down of every run; the metric whose extreme is sought is always among them.
 *
 * @param written valid parts of the survey
 */
export function metricsOf({ metrics, metric }: WrittenSurvey, report: Report): readonly MetricKey[] {
  const taken: MetricKey[] = [];
  for (const [at, key] of (metrics ?? DEFAULT_METRICS).entries()) {
    if (key === undefined) continue;
    if (taken.includes(key))
      report(['metrics', at], {
        code: 'conflict',
        message: `${key} stands twice`,
        expected: 'each metric once',
      });
    else taken.push(key);
  }
  if (metric !== undefined && !taken.includes(metric)) taken.push(metric);
  return taken;
}

/** The extreme as the file words it. */
const SEEK_OF_WORD = {
  smallest: 'smallest',
  largest: 'largest',
  'largest magnitude': 'largestMagnitude',
} as const;

/**
 * What a survey asks.
 *
 * @param written valid parts of the survey
 * @param data plain data of the survey
 * @returns null where a key is missing or wrong
 */
export function taskOf(
  ask: AskWord,
  written: WrittenSurvey,
  data: unknown,
  report: Report,
): SurveyTask | null {
  const { runs, samples, sequence = DEFAULT_SEQUENCE, metric, seek } = written;
  switch (ask) {
    case 'sweep':
      return { kind: 'sweep' };
    case 'random':
      return runs === undefined ? null : { kind: 'random', runs, sequence };
    case 'worst case':
      if (runs === undefined || metric === undefined || seek === undefined) return null;
      return { kind: 'worst', metric, seek: SEEK_OF_WORD[seek], runs };
    case 'sensitivity':
      return samples === undefined ? null : { kind: 'sensitivity', samples, sequence };
    case 'limit map':
      if (written.verdict === false && valueAt(data, ['verdict']) !== undefined)
        report(['verdict'], {
          code: 'conflict',
          message: 'is no, and a limit map consists of verdicts',
          expected: '`yes`, or this key left out',
        });
      return { kind: 'limitMap' };
    default:
      return ask satisfies never;
  }
}
