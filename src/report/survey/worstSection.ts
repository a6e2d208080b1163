import type { Survey } from '../../survey/spec/survey.ts';
import { formatNumber, formatPercent } from '../formatQuantity.ts';
import { capital } from '../judgement/judgedText.ts';
import { labelledTable } from '../judgement/labelledTable.ts';
import { noteFigure } from '../judgement/noteFigure.ts';
import { paragraph } from '../markup.ts';
import { convergenceFigure, SOUGHT } from './convergenceFigure.ts';
import { formatFieldValue } from './fieldUnit.ts';
import { fieldWords } from './fieldWords.ts';
import { shownMetric } from './shownMetric.ts';
import type { SurveyFindings } from './surveyFindings.ts';
import { type SurveyOptions, UNKNOWN_FILE } from './surveyOptions.ts';
import { runCommandText } from './surveyWords.ts';

/** What a search found: the value, where it is, how it compares, how the search came there. */
export function worstSection(survey: Survey, findings: SurveyFindings, options: SurveyOptions): string {
  if (survey.task.kind !== 'worst') return '';
  const { extreme, summary } = findings;
  if (extreme === null)
    return `<section><h2>The worst found</h2>${paragraph('No run can be used: nothing was found.')}</section>`;
  const { task } = survey;
  const { units } = options;
  const shown = shownMetric(task.metric, units);
  const asWritten = options.worst?.asWritten ?? null;
  const rows = survey.fields.map(({ path, unit, spread }, k) => [
    { text: capital(fieldWords(path)) },
    { text: formatFieldValue(extreme.row.values[k]!, unit, units), number: true as const },
    {
      text:
        'from' in spread
          ? `${formatFieldValue(spread.from, unit, units)} … ${formatFieldValue(spread.to, unit, units)}${edgeWords(extreme.row.values[k]!, spread.from, spread.to)}`
          : '—',
    },
  ]);
  return `<section><h2>The worst found</h2>
${
  asWritten === null
    ? ''
    : paragraph(
        `The scenario as written has ${shown.text(asWritten)}${againstWritten(asWritten, extreme.value)}.`,
      )
}
${labelledTable({
  caption: `Where it is: run ${extreme.row.run}`,
  head: [{ text: 'Field' }, { text: 'Value', number: true }, { text: 'Searched' }],
  rows,
})}
${paragraph(`Run it alone: ${runCommandText(options.surveyFile ?? UNKNOWN_FILE, extreme.row.run)}`)}
${noteFigure(convergenceFigure(extreme, summary.runs, asWritten, shown))}
</section>`;
}

/** "The smallest … found in 300 runs is −231 N·m (run 187)."; null where nothing was found. */
export function worstSentence(
  { task }: Survey,
  { extreme, summary }: SurveyFindings,
  { units }: Pick<SurveyOptions, 'units'>,
): string | null {
  if (task.kind !== 'worst' || extreme === null) return null;
  const shown = shownMetric(task.metric, units);
  return `${shown.name}: the ${SOUGHT[task.seek]} found in ${summary.runs} runs is ${shown.text(extreme.value)}, in run ${extreme.row.run}.`;
}

/** From so many times on, per cent would be a long number. */
const LEAST_MULTIPLE = 10;

/** How the worst compares with the scenario as written. */
function againstWritten(written: number, worst: number): string {
  if (worst === written) return '; nothing worse was found';
  if (written === 0) return '';
  const ratio = worst / written;
  if (ratio >= LEAST_MULTIPLE) return `; the worst found is ${formatNumber(ratio)} times that`;
  const share = formatPercent(Math.abs((worst - written) / written));
  return `; the worst found lies ${share} ${worst > written ? 'above' : 'below'} it`;
}

/** An extreme on the edge of a range asks whether the range is the right one. */
function edgeWords(value: number, from: number, to: number): string {
  return value === from || value === to ? ', at its edge: beyond it may be worse' : '';
}
