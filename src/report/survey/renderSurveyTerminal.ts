import type { Survey } from '../../survey/spec/survey.ts';
import type { MetricSummary } from '../../survey/spread/summary.ts';
import type { VerdictCounts } from '../../survey/spread/verdictCounts.ts';
import { CAUTIONS } from '../cautions.ts';
import { wrapToWidth } from '../displayWidth.ts';
import { cleanText } from '../plainText.ts';
import { fieldWords } from './fieldWords.ts';
import { percentText } from './indicesDrawing.ts';
import { criterionWords, verdictSentence } from './mapSection.ts';
import { valuesText } from './metricSection.ts';
import { shownMetric } from './shownMetric.ts';
import { fieldSentence, isDrawn } from './spreadWords.ts';
import type { SurveyFindings } from './surveyFindings.ts';
import type { SurveyOptions } from './surveyOptions.ts';
import { assumptionSentences, baseTitle, countSentences, TASK_NAMES, taskSentence } from './surveyWords.ts';
import { worstSentence } from './worstSection.ts';

/** Columns. */
const WIDTH = 80;
/** A blank at which no line is broken. */
const KEPT = '\u00A0';
/** Reasons that are listed. */
const REASONS = 5;
/** Fields that are named for a metric. */
const NAMED_FIELDS = 4;

/** What a survey came to, for the terminal: no line is longer than 80 columns. */
export function renderSurveyTerminal(
  survey: Survey,
  findings: SurveyFindings,
  options: SurveyOptions,
): string {
  const { summary } = findings;
  const { groups, others } = summary.reasons;
  const worst = worstSentence(survey, findings, options);
  const lines = [
    ...wrapped(`Survey, ${TASK_NAMES[survey.task.kind]}: ${survey.title}`),
    ...wrapped(`Scenario: ${baseTitle(survey)} (${survey.base.fileName})`),
    ...wrapped(`${taskSentence(survey)} Seed ${survey.seed}.`),
    ...survey.fields.flatMap((field) => wrapped(fieldSentence(field, survey.task, options.units), '  ')),
    '',
    ...countSentences(summary, options.shard).flatMap((text) => wrapped(text)),
    ...groups
      .slice(0, REASONS)
      .flatMap(({ count, example, firstRun }) =>
        wrapped(`${count} ×, first run ${firstRun}: ${example}`, '  '),
      ),
    ...remainder(groups.slice(REASONS).reduce((sum, { count }) => sum + count, others)),
    ...(summary.verdicts === null
      ? []
      : ['', ...wrapped(verdictSentence(summary.verdicts)), ...decisiveLines(summary.verdicts)]),
    ...(worst === null ? [] : ['', ...worstLines(survey, findings, options, worst)]),
    ...summary.metrics.flatMap((metric, place) => metricLines(survey, findings, metric, place, options)),
    '',
    ...assumptionSentences(survey, summary).flatMap((text) => wrapped(text)),
    ...wrapped(CAUTIONS.join(' ')),
    '',
  ];
  return lines.join('\n');
}

function wrapped(text: string, indent = ''): string[] {
  return wrapToWidth(cleanText(text), WIDTH - indent.length).map(
    (line) => `${indent}${line.replaceAll(KEPT, ' ')}`,
  );
}

/** A number stays beside its unit. */
function kept(text: string): string {
  return text.replaceAll(' ', KEPT);
}

function remainder(count: number): string[] {
  return count === 0 ? [] : wrapped(`${count} more for other reasons.`, '  ');
}

function decisiveLines({ decisive }: VerdictCounts): string[] {
  const against = decisive.filter(({ notSuitable }) => notSuitable > 0);
  if (against.length === 0) return [];
  const parts = against.map(
    ({ criterion, notSuitable }) => `${criterionWords(criterion).toLowerCase()} (${notSuitable})`,
  );
  return wrapped(`Against it, in how many runs: ${parts.join(', ')}`, '  ');
}

function worstLines(
  survey: Survey,
  { extreme }: SurveyFindings,
  options: SurveyOptions,
  sentence: string,
): string[] {
  const written = options.worst?.asWritten ?? null;
  const shown = survey.task.kind === 'worst' ? shownMetric(survey.task.metric, options.units) : null;
  return [
    ...wrapped(sentence),
    ...wrapped(valuesText(survey, extreme?.row.values ?? [], options), '  '),
    ...(written === null || shown === null
      ? []
      : wrapped(`The scenario as written: ${shown.text(written)}.`, '  ')),
  ];
}

function metricLines(
  survey: Survey,
  { sensitivity }: SurveyFindings,
  metric: MetricSummary,
  place: number,
  { units }: SurveyOptions,
): string[] {
  const shown = shownMetric(metric.metric, units);
  const { smallest, largest, quantiles, count, missing } = metric;
  if (smallest === null || largest === null) return ['', ...wrapped(shown.name), '  no run has a value'];
  const marks = isDrawn(survey.task)
    ? quantiles
        .filter(({ percent }) => percent === 5 || percent === 50 || percent === 95)
        .map(({ percent, value }) =>
          kept(`${percent === 50 ? 'median' : `${percent} %`} ${shown.text(value)}`),
        )
    : [];
  const parts = [
    `smallest ${kept(shown.text(smallest.value))} (run ${smallest.run})`,
    ...marks,
    `largest ${kept(shown.text(largest.value))} (run ${largest.run})`,
  ];
  const fields = (sensitivity?.metrics[place]?.fields ?? [])
    .flatMap(({ field, total }) => (total === null ? [] : [{ field, total }]))
    .sort((a, b) => b.total.value - a.total.value)
    .slice(0, NAMED_FIELDS);
  return [
    '',
    ...wrapped(`${shown.name}${missing === 0 ? '' : ` (in ${count} runs of ${count + missing})`}`),
    ...wrapped(parts.join(', '), '  '),
    ...(fields.length === 0
      ? []
      : wrapped(
          `Total indices: ${fields.map(({ field, total }) => `${fieldWords(field)} ${kept(percentText(total.value))}`).join(', ')}`,
          '  ',
        )),
  ];
}
