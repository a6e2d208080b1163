import type { RowVerdict } from '../../survey/spec/survey.ts';
import type { SurveyMap } from '../../survey/spread/map.ts';
import type { VerdictChange, VerdictLine } from '../../survey/spread/verdictChanges.ts';
import type { VerdictCounts } from '../../survey/spread/verdictCounts.ts';
import type { UnitSystem } from '../formatQuantity.ts';
import { labelledTable } from '../judgement/labelledTable.ts';
import { paragraph } from '../markup.ts';
import { criterionWords, RUN_ITSELF } from './criterionWords.ts';
import { drawingMarkup } from './drawingMarkup.ts';
import { formatFieldValue } from './fieldUnit.ts';
import { fieldName, fieldWords } from './fieldWords.ts';
import { heatMapDrawing } from './heatMapDrawing.ts';
import { limitMapDrawing } from './limitMapDrawing.ts';
import { shownMetric } from './shownMetric.ts';
import type { SurveyFindings } from './surveyFindings.ts';
import type { SurveyOptions } from './surveyOptions.ts';

const OUTCOME_WORDS = {
  suitable: 'suitable',
  notSuitable: 'not suitable',
  notJudged: 'not judged',
} as const;

/** The verdict over two fields, where the limit lies, and what decides. */
export function limitSection({ map, summary }: SurveyFindings, { units }: SurveyOptions): string {
  const drawing = map === null ? null : limitMapDrawing(map, units);
  if (summary.verdicts === null) return '';
  return `<section><h2>Verdicts</h2>
${drawing === null ? '' : drawingMarkup(drawing)}
${notJudgedParagraph(summary.verdicts)}
${decisiveTable(summary.verdicts)}
${map?.lines == null ? '' : linesTable(map, map.lines, units)}
</section>`;
}

/** A map of each metric over two swept fields. */
export function heatSection({ map, summary }: SurveyFindings, { units }: SurveyOptions): string {
  if (map === null) return '';
  const parts = map.tables.flatMap(({ metric }, place) => {
    const shown = shownMetric(metric, units);
    const { smallest, largest } = summary.metrics[place]!;
    if (smallest === null) return [];
    if (smallest.value === largest?.value)
      return [paragraph(`${shown.name}: ${shown.text(smallest.value)} in every run.`)];
    const drawing = heatMapDrawing(map, place, shown, units);
    return drawing === null ? [] : [drawingMarkup(drawing)];
  });
  return parts.length === 0
    ? ''
    : `<section><h2>Over both fields</h2>\n${dutyParagraph(map)}\n${parts.join('\n')}\n</section>`;
}

/** Along a field of the duty no figure of a run changes. */
function dutyParagraph({ first, second }: SurveyMap): string {
  const duties = [first.field, second.field].filter((field) => field.startsWith('duty.'));
  return duties.length === 0
    ? ''
    : paragraph(
        `The duty changes the verdict and no run: along ${duties.map(fieldWords).join(' and ')} the figures below repeat.`,
      );
}

/** "Of 99 runs 60 are suitable, 38 not suitable and 1 is not judged." */
export function verdictSentence({ suitable, notSuitable, notJudged, none }: VerdictCounts): string {
  const runs = suitable + notSuitable + notJudged + none;
  return `Of ${runs} runs, plugging is suitable in ${suitable}, not suitable in ${notSuitable} and not judged in ${notJudged}; runs without a verdict: ${none}.`;
}

function decisiveTable({ decisive }: VerdictCounts): string {
  if (decisive.length === 0) return '';
  const count = (value: number) => ({ text: String(value), number: true as const });
  return labelledTable({
    caption: 'What decides, in how many runs; of a suitable run the criterion with the least margin',
    head: [
      { text: 'Criterion', width: 40 },
      { text: 'Not suitable', number: true, width: 20 },
      { text: 'Not judged', number: true, width: 20 },
      { text: 'Suitable', number: true, width: 20 },
    ],
    rows: decisive.map(({ criterion, notSuitable, notJudged, suitable }) => [
      { text: criterionWords(criterion) },
      count(notSuitable),
      count(notJudged),
      count(suitable),
    ]),
  });
}

/** Lines that are printed; of more an even choice, as all cells stand in the map. */
const MOST_LINES = 24;

function linesTable({ first, second }: SurveyMap, lines: readonly VerdictLine[], units: UnitSystem): string {
  const at = (value: number | null) => (value === null ? '—' : formatFieldValue(value, first.unit, units));
  const every = Math.ceil(lines.length / MOST_LINES);
  const which = every === 1 ? 'each value' : `one of every ${every} values`;
  return labelledTable({
    caption: `Along ${fieldWords(first.field)}, for ${which} of ${fieldWords(second.field)}`,
    head: [
      { text: fieldName(second.field), width: 20 },
      { text: 'Suitable from … to', number: true, width: 28 },
      { text: 'The verdict changes', width: 52 },
    ],
    rows: lines
      .filter((_, k) => k % every === 0)
      .map((line) => [
        { text: formatFieldValue(line.at, second.unit, units) },
        {
          text:
            line.smallestSuitable === null
              ? 'nowhere'
              : `${at(line.smallestSuitable)} … ${at(line.largestSuitable)}`,
          number: true,
        },
        {
          text:
            line.changes.length === 0
              ? 'nowhere in these runs'
              : line.changes.map((change) => changeWords(change, at)).join('; '),
          ...(line.missing === 0 ? {} : { note: `${line.missing} without a verdict` }),
        },
      ]),
  });
}

function changeWords({ from, to, before, after }: VerdictChange, at: (value: number) => string): string {
  return `between ${at(from)} and ${at(to)}: ${sideWords(before)} to ${sideWords(after)}`;
}

/** An outcome with what decides in that very cell: what fails in one, what is missing in the other. */
function sideWords({ outcome, decisive }: RowVerdict): string {
  const why = decisive
    .split(' ')
    .filter((key) => key !== '')
    .map((key) => criterionWords(key).toLowerCase())
    .join(', ');
  if (outcome === 'suitable') return OUTCOME_WORDS[outcome];
  if (why === '') return `${OUTCOME_WORDS[outcome]} (${RUN_ITSELF})`;
  return `${OUTCOME_WORDS[outcome]} (${outcome === 'notJudged' ? 'no figure or limit for ' : ''}${why})`;
}

/** Why runs are not judged; a line where there are such. */
function notJudgedParagraph({ notJudged, decisive }: VerdictCounts): string {
  if (notJudged === 0) return '';
  const lacking = decisive
    .filter((count) => count.notJudged > 0)
    .map((count) => `${criterionWords(count.criterion).toLowerCase()} (${count.notJudged})`);
  const why =
    lacking.length === 0
      ? 'the run could not be completed, contains no plug, or the scenario assumes faults of its starter'
      : `a figure or limit is missing that is required for ${lacking.join(', ')}`;
  return paragraph(
    `Not judged in ${notJudged} of the runs: ${why}. \`suitability\` of the scenario of such a run says what would have to be stated.`,
    'note',
  );
}
