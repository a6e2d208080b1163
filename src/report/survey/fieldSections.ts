import type { Survey } from '../../survey/spec/survey.ts';
import { noteFigure } from '../judgement/noteFigure.ts';
import { list, paragraph } from '../markup.ts';
import { shownMetric } from './shownMetric.ts';
import { spreadFigure } from './spreadFigure.ts';
import { fieldSentence, isDrawn } from './spreadWords.ts';
import type { SurveyFindings } from './surveyFindings.ts';
import type { SurveyOptions } from './surveyOptions.ts';
import { sweepFigure } from './sweepFigure.ts';

/** Panels of one figure: more would not stay on a page. */
const PANELS = 4;

/** What is varied, and what is assumed by that. */
export function variedSection(
  survey: Survey,
  assumptions: readonly string[],
  options: SurveyOptions,
): string {
  return `<section><h2>What is varied, and what is assumed</h2>
${list(survey.fields.map((field) => fieldSentence(field, survey.task, options.units)))}
${assumptions.map((text) => paragraph(text)).join('\n')}
${paragraph(`Seed ${survey.seed}: the same survey with the same seed makes the same runs, on any machine.`, 'muted')}
</section>`;
}

/** What the other fields do while one is looked at. */
function othersWords({ task, fields }: Survey): string {
  if (fields.length === 1) return 'no other field varies';
  if (isDrawn(task)) return 'the other fields vary within their spreads';
  return task.kind === 'worst'
    ? 'the other fields are where the search has put them'
    : 'the other fields take all their values';
}

/** How the metrics follow each field; a curve where one field is swept. */
export function followSection(survey: Survey, findings: SurveyFindings, { units }: SurveyOptions): string {
  const { summary, curve, binned } = findings;
  const shown = summary.metrics.flatMap(({ metric, count }, place) =>
    count === 0 ? [] : [{ shown: shownMetric(metric, units), place }],
  );
  const parts = Array.from({ length: Math.ceil(shown.length / PANELS) }, (_, k) =>
    shown.slice(k * PANELS, (k + 1) * PANELS),
  );
  const figures =
    curve !== null
      ? parts.map((metrics) => sweepFigure(survey, curve, metrics, units))
      : binned.flatMap((field, index) =>
          parts.map((metrics) =>
            spreadFigure(survey.fields[index]!, field, {
              units,
              index,
              metrics,
              others: othersWords(survey),
            }),
          ),
        );
  if (figures.length === 0) return '';
  const searched =
    survey.task.kind === 'worst'
      ? paragraph('A search looks most where it expects the worst: where it looked little, little is known.')
      : '';
  return `<section><h2>How the figures follow each field</h2>
${searched}
${figures.map(noteFigure).join('\n')}
</section>`;
}
