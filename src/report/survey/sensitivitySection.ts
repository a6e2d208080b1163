import type { Survey } from '../../survey/spec/survey.ts';
import type { MetricSensitivity } from '../../survey/spread/sensitivity.ts';
import type { Tornado } from '../../survey/spread/tornado.ts';
import { labelledTable } from '../judgement/labelledTable.ts';
import { paragraph } from '../markup.ts';
import { escapeMarkup } from '../plainText.ts';
import { drawingMarkup } from './drawingMarkup.ts';
import { fieldName } from './fieldWords.ts';
import { indicesDrawing } from './indicesDrawing.ts';
import { indexText } from './percentText.ts';
import { sumWords, TOTALS_NOTE, tornadoWarnings } from './sensitivityWords.ts';
import { shownMetric } from './shownMetric.ts';
import type { SurveyFindings } from './surveyFindings.ts';
import type { SurveyOptions } from './surveyOptions.ts';
import { tornadoDrawing } from './tornadoDrawing.ts';

/** Which fields move which metric: each alone, and their shares of the variance. */
export function sensitivitySection(
  survey: Survey,
  findings: SurveyFindings,
  { units }: SurveyOptions,
): string {
  const { sensitivity, tornadoes } = findings;
  if (sensitivity === null) return '';
  const warningsOf = (tornado: Tornado | undefined) =>
    tornado === undefined
      ? ''
      : tornadoWarnings(tornado, survey.fields, units)
          .map((text) => paragraph(text, 'note'))
          .join('');
  const parts = sensitivity.metrics.map((metric, place) => {
    const shown = shownMetric(metric.metric, units);
    const tornado = tornadoes[place];
    const effects = tornado === undefined ? null : tornadoDrawing(tornado, survey.fields, shown, units);
    const indices = indicesDrawing(metric, shown);
    return `<h3>${escapeMarkup(shown.name)}</h3>
${
  effects === null
    ? paragraph(
        'The run with all fields at their medians has no value: what each field does alone cannot be told.',
      )
    : `${drawingMarkup(effects)}${warningsOf(tornado)}`
}
${indices === null ? paragraph(`No indices: ${metric.reason}.`) : drawingMarkup(indices)}
${indices === null ? '' : indicesTable(metric)}`;
  });
  return `<section><h2>Which fields matter</h2>
${paragraph(sensitivity.note)}
${paragraph(TOTALS_NOTE)}
${parts.join('\n')}
</section>`;
}

function indicesTable(metric: MetricSensitivity): string {
  const { fields, used, leftOut, sumOfFirst } = metric;
  const left =
    leftOut === 0
      ? ''
      : `; ${leftOut} left out because a run in ${leftOut === 1 ? 'it' : 'each'} has no value`;
  return `${labelledTable({
    caption: `Indices with intervals of 95 %, from ${used} samples${left}`,
    head: [{ text: 'Field' }, { text: 'First order', number: true }, { text: 'Total', number: true }],
    rows: [
      ...fields.map(({ field, first, total }) => [
        { text: fieldName(field) },
        { text: indexText(first), number: true as const },
        { text: indexText(total), number: true as const },
      ]),
      [{ text: 'Sum' }, { text: indexText(sumOfFirst), number: true }, { text: '—', number: true }],
    ],
  })}
${sumOfFirst === null ? '' : paragraph(sumWords(sumOfFirst))}`;
}
