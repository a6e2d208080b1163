import type { Survey } from '../../survey/spec/survey.ts';
import type { RunValue } from '../../survey/spread/moments.ts';
import type { MetricSummary, Quantile } from '../../survey/spread/summary.ts';
import { type LabelledCell, labelledTable } from '../judgement/labelledTable.ts';
import { noteFigure } from '../judgement/noteFigure.ts';
import { paragraph } from '../markup.ts';
import { escapeMarkup } from '../plainText.ts';
import { formatFieldValue } from './fieldUnit.ts';
import { fieldWords } from './fieldWords.ts';
import { histogramFigure } from './histogramFigure.ts';
import { runCommandText, WORST_FILE_WORDS } from './runCommand.ts';
import { type ShownMetric, shownMetric } from './shownMetric.ts';
import { isDrawn } from './spreadWords.ts';
import type { SurveyFindings } from './surveyFindings.ts';
import type { SurveyOptions } from './surveyOptions.ts';

/** One metric: how it is spread and which runs are its extremes. */
export function metricSection(
  survey: Survey,
  findings: SurveyFindings,
  place: number,
  options: SurveyOptions,
): string {
  const metric = findings.summary.metrics[place]!;
  const shown = shownMetric(metric.metric, options.units);
  const drawn = isDrawn(survey.task);
  const figure = drawn ? histogramFigure(metric, shown) : null;
  return `<section id="metric-${metric.metric}"><h2>${escapeMarkup(shown.name)}</h2>
${paragraph(`${shown.definition}${missingWords(metric)}`, 'muted')}
${metric.count === 0 ? paragraph('No run has a value.') : ''}
${figure === null ? '' : noteFigure(figure)}
${metric.count === 0 ? '' : quantileTable(metric, shown, drawn)}
${metric.count === 0 ? '' : extremesTable(survey, metric, shown, findings, options)}
</section>`;
}

function missingWords({ missing, count }: MetricSummary): string {
  if (missing === 0 || count === 0) return '';
  return missing === 1
    ? ' One run does not contain it and is left out here.'
    : ` ${missing} runs do not contain it and are left out here.`;
}

function quantileTable(metric: MetricSummary, shown: ShownMetric, drawn: boolean): string {
  const bounded = metric.quantiles.some(({ low, high }) => low !== null || high !== null);
  const row = (name: string, value: string, interval = '—'): LabelledCell[] => [
    { text: name },
    { text: value, number: true },
    ...(bounded ? [{ text: interval, number: true } as const] : []),
  ];
  const quantiles = drawn ? metric.quantiles : metric.quantiles.filter(({ percent }) => percent === 50);
  return labelledTable({
    caption: `${drawn ? 'Quantiles' : 'Middle and spread of these runs'}, ${metric.count} ${metric.count === 1 ? 'run' : 'runs'}`,
    head: [
      { text: 'Share of the runs below' },
      { text: 'Value', number: true },
      ...(bounded ? [{ text: 'Interval of 95 %', number: true } as const] : []),
    ],
    rows: [
      ...quantiles.map((quantile) =>
        row(
          quantile.percent === 50 ? '50 % (median)' : `${quantile.percent} %`,
          shown.text(quantile.value),
          intervalText(quantile, shown),
        ),
      ),
      row('Mean', shown.text(metric.mean)),
      row('Standard deviation', deviationText(metric.deviation, shown)),
    ],
  });
}

/** "−190 … −180 N·m"; a bound that so few runs do not give is told as missing. */
export function intervalText({ low, high }: Quantile, shown: ShownMetric): string {
  if (low === null && high === null) return 'too few runs';
  const side = (value: number | null) => (value === null ? 'no bound' : shown.text(value));
  return `${side(low)} … ${side(high)}`;
}

/** A deviation is no instant and no crest: the word behind the unit goes. */
function deviationText(deviation: number | null, shown: ShownMetric): string {
  return deviation === null ? '—' : shown.difference(deviation);
}

function extremesTable(
  survey: Survey,
  { smallest, largest }: MetricSummary,
  shown: ShownMetric,
  { named, extreme: found }: SurveyFindings,
  options: SurveyOptions,
): string {
  const row = (name: string, extreme: RunValue | null): LabelledCell[] =>
    extreme === null
      ? []
      : [
          { text: name },
          { text: shown.text(extreme.value), number: true },
          { text: String(extreme.run), number: true },
          {
            text: valuesText(survey, named.get(extreme.run)?.values ?? [], options),
            note: found?.row.run === extreme.run ? WORST_FILE_WORDS : runCommandText(options, extreme.run),
          },
        ];
  const same = smallest !== null && smallest.value === largest?.value;
  return labelledTable({
    caption: 'Extreme runs, and the command that writes the scenario of each to be run alone',
    head: [
      { text: 'Extreme', width: 14 },
      { text: 'Value', number: true, width: 16 },
      { text: 'Run', number: true, width: 10 },
      { text: 'Values of the fields', width: 60 },
    ],
    rows: same ? [row('Every run', smallest)] : [row('Smallest', smallest), row('Largest', largest)],
  });
}

/** "Load inertia 0.0521 kg·m², supply angle at t = 0 31.2°" */
export function valuesText(
  survey: Survey,
  values: readonly number[],
  { units }: Pick<SurveyOptions, 'units'>,
): string {
  return survey.fields
    .map(
      ({ path, unit }, k) => `${fieldWords(path)}: ${formatFieldValue(values[k] ?? Number.NaN, unit, units)}`,
    )
    .join('; ');
}
