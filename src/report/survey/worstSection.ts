import type { Survey } from '../../survey/spec/survey.ts';
import type { FoundExtreme } from '../../survey/worst/extremeOf.ts';
import type { SearchEnd } from '../../survey/worst/searchEnd.ts';
import { formatNumber, formatPercent } from '../formatQuantity.ts';
import { capital } from '../judgement/judgedText.ts';
import { labelledTable } from '../judgement/labelledTable.ts';
import { noteFigure } from '../judgement/noteFigure.ts';
import { paragraph } from '../markup.ts';
import { convergenceFigure, SOUGHT } from './convergenceFigure.ts';
import { formatFieldValue } from './fieldUnit.ts';
import { fieldWords } from './fieldWords.ts';
import { WORST_FILE_WORDS } from './runCommand.ts';
import { shownMetric } from './shownMetric.ts';
import type { SurveyFindings } from './surveyFindings.ts';
import type { SurveyOptions } from './surveyOptions.ts';

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
          ? `${formatFieldValue(spread.from, unit, units)} … ${formatFieldValue(spread.to, unit, units)}${edgeWords(extreme, k, spread)}`
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
${paragraph(`Run it alone: ${WORST_FILE_WORDS}`)}
${extreme.end === null ? '' : paragraph(endWords(survey, extreme, summary.runs))}
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
  return `${shown.name}: the ${SOUGHT[task.seek]} found in ${summary.runs} runs is ${shown.text(extreme.value)}, in run ${extreme.row.run}.${shortEnd(extreme, task.runs)}`;
}

function shortEnd({ end }: FoundExtreme, runs: number): string {
  if (end === null) return '';
  return end === 'rest'
    ? ' The search came to rest.'
    : ` The budget of ${runs} runs was used up; more runs may find worse.`;
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
function edgeWords(
  { row, risingEdges }: FoundExtreme,
  field: number,
  { from, to }: { readonly from: number; readonly to: number },
): string {
  const value = row.values[field]!;
  if (value !== from && value !== to) return '';
  return risingEdges.includes(field) ? ', at its edge: beyond it may be worse' : ', at its edge';
}

/** Whether more runs may find worse. */
function endWords(survey: Survey, extreme: FoundExtreme, runs: number): string {
  const { task } = survey;
  if (task.kind !== 'worst' || extreme.end === null) return '';
  if (extreme.end === 'rest')
    return `The search came to rest after ${runs} of at most ${task.runs} runs: no small step from the worst leads to worse, and one search after another elsewhere found nothing worse. That makes it likely, and no more than that, that nothing worse is left in the ranges.`;
  const { still, more } = USED_UP[extreme.end];
  return `The budget of ${task.runs} runs was used up while the search still ${still}; ${more}.`;
}

/** What a search was at when its runs were used up, and what more of them may do. */
const USED_UP: Readonly<
  Record<Exclude<SearchEnd, 'rest'>, { readonly still: string; readonly more: string }>
> = {
  exploring: {
    still: 'spread its runs over the ranges and had not begun to close in on anything',
    more: 'more runs are likely to find worse',
  },
  descending: {
    still: 'followed the metric from the worst places of the ranges',
    more: 'more runs are likely to find worse',
  },
  polishing: { still: 'closed in on the worst', more: 'more runs may find worse' },
  'exploring on': {
    still: 'looked elsewhere in the ranges',
    more: 'around the worst it had come to rest, elsewhere more runs may find worse',
  },
};
