import type { Survey } from '../../survey/spec/survey.ts';
import type { Reasons } from '../../survey/spread/reasons.ts';
import type { RowSource } from '../../survey/spread/rowSource.ts';
import type { SurveySummary } from '../../survey/spread/summary.ts';
import { CAUTIONS } from '../cautions.ts';
import { cutToWidth } from '../displayWidth.ts';
import { labelledTable } from '../judgement/labelledTable.ts';
import { notePage } from '../judgement/notePage.ts';
import { keyNumberList } from '../keyNumberList.ts';
import type { KeyNumber } from '../keyNumbers.ts';
import { paragraph } from '../markup.ts';
import { cleanText, escapeMarkup } from '../plainText.ts';
import { followSection, variedSection } from './fieldSections.ts';
import { failureSentence } from './gravestReason.ts';
import { heatSection, limitSection, verdictSentence } from './mapSection.ts';
import { metricSection } from './metricSection.ts';
import { runCommandText } from './runCommand.ts';
import { sensitivitySection } from './sensitivitySection.ts';
import { shownMetric } from './shownMetric.ts';
import { isDrawn } from './spreadWords.ts';
import { type SurveyFindings, surveyFindings } from './surveyFindings.ts';
import type { SurveyOptions } from './surveyOptions.ts';
import { assumptionSentences, baseTitle, countSentences, TASK_NAMES, taskSentence } from './surveyWords.ts';
import { type NamedExtreme, worseFirst } from './worseSide.ts';
import { worstSection, worstSentence } from './worstSection.ts';

/** Longest title in the footer of a printed page, columns. */
const FOOTER_TITLE = 60;
/** A longer title is set smaller, characters. */
const LONG_TITLE = 90;
/** Numbers at the head of the page. */
const KEY_NUMBERS = 4;

/**
 * The report on a survey as one HTML file that needs nothing else; its size does not grow with the number of runs.
 *
 * @throws RangeError where a reading of the rows gave other values than the one before
 */
export function renderSurveyHtml(survey: Survey, rows: RowSource, options: SurveyOptions): string {
  return surveyPage(survey, surveyFindings(survey, rows), options);
}

/** The same from findings that are computed already. */
export function surveyPage(survey: Survey, findings: SurveyFindings, options: SurveyOptions): string {
  const { summary } = findings;
  const usable = summary.byStatus.good > 0;
  const metrics = usable
    ? survey.metrics.map((_, place) => metricSection(survey, findings, place, options))
    : [];
  return notePage({
    title: `${survey.title}: survey`,
    footer: `${cutToWidth(cleanText(survey.title), FOOTER_TITLE)} · survey`,
    version: options.version,
    body: [
      headSection(survey, findings, options),
      variedSection(survey, assumptionSentences(survey, summary), options),
      worstSection(survey, findings, options),
      limitSection(findings, options),
      heatSection(findings, options),
      sensitivitySection(survey, findings, options),
      ...(findings.curve === null
        ? [...metrics, followSection(survey, findings, options)]
        : [followSection(survey, findings, options), ...metrics]),
      reasonsSection(summary, options),
    ],
  });
}

function headSection(survey: Survey, findings: SurveyFindings, options: SurveyOptions): string {
  const { summary } = findings;
  const title = survey.title.length > LONG_TITLE ? ' class="long"' : '';
  const worst = worstSentence(survey, findings, options);
  const failures = failureSentence(summary);
  return `<section>
<header style="padding-inline:0">
${summary.byStatus.good > 0 ? '' : '<p class="alarm" role="alert">No run can be used: there are no figures.</p>'}
<p class="kind">Survey: ${TASK_NAMES[survey.task.kind]}</p>
<h1${title}>${escapeMarkup(survey.title)}</h1>
</header>
${paragraph(`Scenario: ${baseTitle(survey)} (${survey.base.fileName})`, 'muted')}
${survey.description === '' ? '' : paragraph(survey.description)}
${paragraph(taskSentence(survey), 'question')}
${failures === null ? '' : paragraph(failures, 'finding')}
${worst === null ? '' : paragraph(worst, 'finding')}
${summary.verdicts === null ? '' : paragraph(verdictSentence(summary.verdicts), 'finding')}
${countSentences(summary, options.shard)
  .map((text) => paragraph(text))
  .join('\n')}
${worst === null ? keyNumbersOf(survey, summary, options) : ''}
${paragraph(CAUTIONS.join(' '), 'cautions small')}
</section>`;
}

/** Of draws the median with nine runs of ten about it and the worst; of other runs the worst and the mildest. */
function keyNumbersOf(survey: Survey, summary: SurveySummary, { units }: SurveyOptions): string {
  const drawn = isDrawn(survey.task);
  const numbers = summary.metrics
    .filter(({ count }) => count > 0)
    .slice(0, KEY_NUMBERS)
    .map((metric): KeyNumber => {
      const shown = shownMetric(metric.metric, units);
      const at = (percent: number) =>
        shown.text(metric.quantiles.find((quantile) => quantile.percent === percent)?.value ?? null);
      const ends = worseFirst(metric.metric, metric.smallest, metric.largest);
      const common = { key: metric.metric, label: shown.name };
      const near = `5 to 95 % of the runs: ${at(5)} … ${at(95)}`;
      if (ends === null) return { ...common, value: '—', detail: '' };
      const [worse, milder] = ends;
      const end = ({ end: name, value, run }: NamedExtreme) => `${name} ${shown.text(value)}, run ${run}`;
      if (worse.value === milder.value)
        return { ...common, value: shown.text(worse.value), detail: 'in every run' };
      return drawn
        ? { ...common, value: at(50), detail: `median; ${near}; ${end(worse)}` }
        : {
            ...common,
            value: shown.text(worse.value),
            detail: `${worse.end}, run ${worse.run}; ${end(milder)}`,
          };
    });
  return numbers.length === 0 ? '' : keyNumberList(numbers);
}

const STATUS_WORDS = {
  good: 'good',
  failed: 'ended badly',
  refused: 'no such scenario',
  unbalanced: 'energy does not balance',
} as const;

function reasonsSection({ reasons }: SurveySummary, options: SurveyOptions): string {
  return reasons.groups.length === 0
    ? ''
    : `<section><h2>Runs that cannot be used</h2>
${reasonsTable(reasons, options)}
${reasons.others === 0 ? '' : paragraph(`${reasons.others} more for other reasons.`)}
</section>`;
}

function reasonsTable({ groups }: Reasons, options: SurveyOptions): string {
  return labelledTable({
    caption: 'Grouped by reason, numbers aside; the reason is that of the first such run',
    head: [
      { text: 'Reason', width: 60 },
      { text: 'Kind', width: 20 },
      { text: 'Runs', number: true, width: 10 },
      { text: 'First', number: true, width: 10 },
    ],
    rows: groups.map(({ example, status, count, firstRun }) => [
      { text: example, note: runCommandText(options, firstRun) },
      { text: STATUS_WORDS[status] },
      { text: String(count), number: true },
      { text: String(firstRun), number: true },
    ]),
  });
}
