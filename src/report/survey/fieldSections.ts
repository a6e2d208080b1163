import type { Survey } from '../../survey/spec/survey.ts';
import type { FigureSpec } from '../figureSpec.ts';
import { noteFigure } from '../judgement/noteFigure.ts';
import { list, paragraph } from '../markup.ts';
import { escapeMarkup } from '../plainText.ts';
import { renderSvg } from '../renderSvg.ts';
import { goesRound } from './sensitivityWords.ts';
import { shownMetric } from './shownMetric.ts';
import { spreadFigure } from './spreadFigure.ts';
import { fieldSentence, isDrawn } from './spreadWords.ts';
import type { SurveyFindings } from './surveyFindings.ts';
import type { SurveyOptions } from './surveyOptions.ts';
import { sweepFigure } from './sweepFigure.ts';

/** Width of a small figure, px: that of a telephone. */
const SMALL_WIDTH = 400;
/** Panels of one figure: more would not stay on a page. */
const PANELS = 4;

/** What half a period of the supply does: all voltages change their sign, and with them all currents. */
const REPEATS =
  'Shifted by half a period, 180° of supply angle, a sinusoidal supply changes the sign of every voltage and nothing else: ' +
  'every current repeats with the other sign, and torques, times, heats and magnitudes of currents repeat as they are. ' +
  'A range of 180° holds all that the supply angle does to them.';

/** What is varied, and what is assumed by that. */
export function variedSection(
  survey: Survey,
  assumptions: readonly string[],
  options: SurveyOptions,
): string {
  return `<section><h2>What is varied, and what is assumed</h2>
${list(survey.fields.map((field) => fieldSentence(field, survey.task, options.units)))}
${survey.fields.some(goesRound) ? paragraph(REPEATS) : ''}
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

/** Style of small figures side by side: as many as have room, one below the other on a telephone. */
const GRID =
  'display:grid;grid-template-columns:repeat(auto-fill,minmax(min(19rem,100%),1fr));gap:0.6rem 1.2rem';

/** How the metrics follow each field; a curve where one field is swept. */
export function followSection(survey: Survey, findings: SurveyFindings, { units }: SurveyOptions): string {
  const { summary, curve, binned } = findings;
  const shown = summary.metrics.flatMap(({ metric, count }, place) =>
    count === 0 ? [] : [{ shown: shownMetric(metric, units), place }],
  );
  if (shown.length === 0 || (curve === null && binned.length === 0)) return '';
  const heading = '<h2>How the figures follow each field</h2>';
  if (curve !== null) {
    const parts = Array.from({ length: Math.ceil(shown.length / PANELS) }, (_, k) =>
      shown.slice(k * PANELS, (k + 1) * PANELS),
    );
    const figures = parts.map((metrics) => noteFigure(sweepFigure(survey, curve, metrics, units)));
    return `<section>${heading}\n${figures.join('\n')}\n</section>`;
  }
  const searched =
    survey.task.kind === 'worst'
      ? ' A search looks most where it expects the worst: where it looked little, little is known.'
      : '';
  const grids = shown.map(({ shown: metric, place }) => {
    const figures = binned.map((field, index) =>
      smallFigure(spreadFigure(survey.fields[index]!, field, { units, index, shown: metric, place })),
    );
    return `<h3>${escapeMarkup(metric.name)}</h3>\n<div style="${GRID}">${figures.join('\n')}</div>`;
  });
  return `<section>${heading}
${paragraph(`Median and the stretch from 5 to 95 % of the runs at each value or in each stretch of values; ${othersWords(survey)}. Right to a thousandth of the axis.${searched}`)}
${grids.join('\n')}
</section>`;
}

/** A figure in the size of a telephone, on every page. */
function smallFigure(spec: FigureSpec): string {
  const svg = renderSvg(spec, { theme: 'css', width: SMALL_WIDTH });
  return `<figure style="margin:0">${svg}</figure>`;
}
