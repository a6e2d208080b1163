import type { Survey } from '../../survey/spec/survey.ts';
import type { MetricSummary, Quantile } from '../../survey/spread/summary.ts';
import type { VerdictCounts } from '../../survey/spread/verdictCounts.ts';
import { CAUTIONS } from '../cautions.ts';
import { wrapToWidth } from '../displayWidth.ts';
import { cleanText } from '../plainText.ts';
import { criterionWords } from './criterionWords.ts';
import { fieldWords } from './fieldWords.ts';
import { failureSentence, gravestReason } from './gravestReason.ts';
import { verdictSentence } from './mapSection.ts';
import { intervalText, valuesText } from './metricSection.ts';
import { indexText } from './percentText.ts';
import { runCommandText } from './runCommand.ts';
import { rankedFields, TOTALS_NOTE } from './sensitivityWords.ts';
import { type ShownMetric, shownMetric } from './shownMetric.ts';
import { fieldSentence, isDrawn } from './spreadWords.ts';
import type { SurveyFindings } from './surveyFindings.ts';
import type { SurveyOptions } from './surveyOptions.ts';
import { assumptionSentences, baseTitle, countSentences, TASK_NAMES, taskSentence } from './surveyWords.ts';
import { worseFirst } from './worseSide.ts';
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
  const failures = failureSentence(summary);
  const lines = [
    ...wrapped(`Survey, ${TASK_NAMES[survey.task.kind]}: ${survey.title}`),
    ...(failures === null ? [] : wrapped(failures)),
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
    ...runLines(survey, findings, options),
    '',
    ...(findings.sensitivity === null ? [] : wrapped(TOTALS_NOTE)),
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
        .map((quantile) => markText(quantile, shown))
    : [];
  const parts = [
    `smallest ${kept(shown.text(smallest.value))} (run ${smallest.run})`,
    ...marks,
    `largest ${kept(shown.text(largest.value))} (run ${largest.run})`,
  ];
  const fields = rankedFields(sensitivity?.metrics[place]?.fields ?? []).slice(0, NAMED_FIELDS);
  return [
    '',
    ...wrapped(`${shown.name}${missing === 0 ? '' : ` (in ${count} runs of ${count + missing})`}`),
    ...wrapped(parts.join(', '), '  '),
    ...(fields.length === 0
      ? []
      : wrapped(
          `Total indices: ${fields.map(({ field, total }) => `${fieldWords(field)} ${kept(indexText(total))}`).join(', ')}`,
          '  ',
        )),
  ];
}

/** "median −580 N·m (−600 N·m … −560 N·m)": the interval in brackets where there is one. */
function markText(quantile: Quantile, shown: ShownMetric): string {
  const { percent, value, low, high } = quantile;
  const mark = kept(`${percent === 50 ? 'median' : `${percent} %`} ${shown.text(value)}`);
  return low === null && high === null ? mark : `${mark} ${kept(`(${intervalText(quantile, shown)})`)}`;
}

/** How the scenario of a run is got: of the worst case, else of the worst run of the first metric, else of the gravest failure. */
function runLines({ task }: Survey, { summary, extreme }: SurveyFindings, options: SurveyOptions): string[] {
  if (task.kind === 'worst' && extreme !== null) return [];
  const [first] = summary.metrics;
  const ends = first === undefined ? null : worseFirst(first.metric, first.smallest, first.largest);
  const run = ends?.[0].run ?? gravestReason(summary.reasons)?.firstRun;
  if (run === undefined) return [];
  const text = runCommandText(options, run);
  if (options.surveyFile === undefined) return ['', ...wrapped(text)];
  return ['', ...wrapped(`Scenario of one run, here run ${run}:`), ...commandLines(text)];
}

/** A command over several lines as a shell reads it; blanks within quotes are kept. */
function commandLines(command: string): string[] {
  const lines = wrapToWidth(cleanText(command).replaceAll(/'[^']*'/gu, kept), WIDTH - 4);
  return lines.map((line, k) => `  ${line.replaceAll(KEPT, ' ')}${k + 1 < lines.length ? ' \\' : ''}`);
}
