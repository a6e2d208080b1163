import { readYaml } from '../../scenario/readYaml.ts';
import type { Survey, SurveyTask } from '../../survey/spec/survey.ts';
import type { SurveySummary } from '../../survey/spread/summary.ts';
import { isDrawn } from './spreadWords.ts';

/** One of several parts of a survey, each made by itself. */
export interface SurveyShard {
  /** Number of this part, from 1. */
  readonly index: number;
  /** Number of parts. */
  readonly of: number;
}

/** What a survey is called, by what it asks. */
export const TASK_NAMES: Readonly<Record<SurveyTask['kind'], string>> = {
  sweep: 'sweep',
  random: 'random draws',
  worst: 'search for a worst case',
  sensitivity: 'sensitivity',
  limitMap: 'limit map',
};

/** Title of the scenario that is varied; the name of its file where it states none. */
export function baseTitle({ base }: Survey): string {
  const value = readYaml(base.text).data?.value;
  const title = typeof value === 'object' && value !== null && 'title' in value ? value.title : null;
  return typeof title === 'string' && title.trim() !== '' ? title : base.fileName;
}

/** What was asked, in a sentence. */
export function taskSentence({ task, fields, verdict }: Survey): string {
  const count = fields.length === 1 ? 'one field' : `${fields.length} fields`;
  const judged = verdict || task.kind === 'limitMap' ? ' Each run is judged.' : '';
  switch (task.kind) {
    case 'sweep':
      return `Every combination of the listed values of ${count}.${judged}`;
    case 'random':
      return `${task.runs} draws of ${count} at once, ${sequenceWords(task.sequence)}.${judged}`;
    case 'worst':
      return `A global search over the ranges of ${count}, of ${task.runs} runs at most.${judged}`;
    case 'sensitivity':
      return `Each field alone at its 10 % and 90 % quantile, then ${task.samples} samples of ${fields.length + 2} runs each, ${sequenceWords(task.sequence)}, from which indices follow.${judged}`;
    case 'limitMap':
      return `Every combination of the listed values of ${count}.${judged}`;
  }
}

function sequenceWords(sequence: 'quasi' | 'pseudo'): string {
  return sequence === 'quasi' ? 'quasi-random (scrambled Sobol points)' : 'pseudo-random';
}

/** How many runs there are and how many cannot be used, a sentence or two. */
export function countSentences({ runs, byStatus }: SurveySummary, shard: SurveyShard | null): string[] {
  const bad = runs - byStatus.good;
  const part =
    shard === null ? '' : ` This is part ${shard.index} of ${shard.of}: the rest of the runs is not in it.`;
  const parts = [
    [byStatus.failed, 'ended badly'],
    [byStatus.refused, 'have values that no scenario can have'],
    [byStatus.unbalanced, 'do not close their energy balance'],
  ] as const;
  const reasons = parts.flatMap(([count, words]) => (count === 0 ? [] : [`${count} ${words}`]));
  if (runs === 0) return [`No run was made.${part}`];
  return [
    `${runs} ${runs === 1 ? 'run was' : 'runs were'} made; ${
      bad === 0
        ? runs === 1
          ? 'it can be used'
          : 'all can be used'
        : `${bad} cannot be used (${reasons.join(', ')}) and ${bad === 1 ? 'is' : 'are'} left out of all figures below`
    }.${part}`,
  ];
}

/** What quantiles, intervals and limits of a survey are and are not. */
export function assumptionSentences(survey: Survey, summary: SurveySummary): string[] {
  const { task, fields } = survey;
  const drawn = isDrawn(task);
  return [
    ...(drawn
      ? [
          `The distributions are assumptions of whoever asked${fields.length > 1 ? ', and the fields are drawn independently of each other' : ''}. A quantile says how the figures are spread where the fields are spread like that; it is no probability of anything in the plant unless the plant is.`,
        ]
      : []),
    summary.note,
    ...(task.kind === 'random'
      ? [
          'An interval of 95 % says how uncertain a quantile is because only so many runs were made. It says nothing of how right the model, its data or the distributions are.',
        ]
      : []),
    ...(summary.byStatus.good < summary.runs
      ? [
          'Runs that cannot be used are left out, not counted as bad or good. If they fail where the figures are worst, the rest look better than they should: see why they failed.',
        ]
      : []),
    ...(task.kind === 'worst'
      ? ['A search finds the worst it comes upon. It proves no bound, and it knows the stated ranges only.']
      : []),
  ];
}
