import type { Criterion } from '../../assess/criterion.ts';
import { CRITERION_LABELS } from '../judgementWords.ts';
import { fullStop, sentenceOf } from './judgedText.ts';
import { labelledTable } from './labelledTable.ts';
import { outcomeText } from './outcomeMark.ts';

/** The whole source of every limit and what a reader must know of the value; the first page has no room for them. */
export function remarksSection(criteria: readonly Criterion[]): string {
  const rows = criteria
    .filter(({ outcome, value, limit }) => outcome !== 'notJudged' && !(value === null && limit === null))
    .map((criterion) => {
      const { form, words } = outcomeText(criterion);
      return [
        { text: CRITERION_LABELS[criterion.key], note: criterion.name },
        { text: words, mark: form },
        { text: fullStop(criterion.source) },
        { text: criterion.remark === '' ? '—' : sentenceOf(criterion.remark) },
      ];
    });
  if (rows.length === 0) return '';
  return `<section><h2>To the criteria</h2>
${labelledTable({
  caption: 'Source of each limit in full, and what must be known of the value',
  head: [
    { text: 'Criterion', width: 22 },
    { text: 'Outcome', width: 12 },
    { text: 'Source of the limit', width: 30 },
    { text: 'Remark', width: 36 },
  ],
  rows,
})}
</section>`;
}
