import { type Criterion, WAIVED } from '../../assess/criterion.ts';

/** Form of the mark beside an outcome: every one can be told from the others without colour. */
export type OutcomeForm = 'pass' | 'close' | 'fail' | 'open' | 'none';

/** What came of a criterion, for print. */
export interface OutcomeText {
  readonly form: OutcomeForm;
  readonly words: string;
}

/** The outcome in words, with the reason where it is not judged. */
export function outcomeText({ outcome, source, value, limit, remark }: Criterion): OutcomeText {
  switch (outcome) {
    case 'pass':
      if (source === WAIVED) return { form: 'none', words: 'waived: no limit applies, by the scenario' };
      if (value === null && limit === null)
        return { form: 'none', words: remark === '' ? 'does not apply' : `does not apply: ${remark}` };
      return { form: 'pass', words: 'pass' };
    case 'close':
      return { form: 'close', words: 'close to the limit' };
    case 'fail':
      return { form: 'fail', words: 'fail' };
    case 'notJudged':
      return { form: 'open', words: remark === '' ? 'not judged' : remark };
  }
}

/** px */
const SIZE = 12;

/** A ring with a tick, a triangle, a full square with a cross, a broken ring with a bar, a dash: drawn in the colour of the text. */
const DRAWINGS: Readonly<Record<OutcomeForm, string>> = {
  pass: '<circle cx="6" cy="6" r="5" fill="none" stroke="currentColor"/><path d="M3.4 6.2 5.4 8.2 8.7 4" fill="none" stroke="currentColor" stroke-width="1.5"/>',
  close:
    '<path d="M6 1 11.3 10.7H.7Z" fill="none" stroke="currentColor" stroke-width="1.2"/><path d="M6 4.4V7.4M6 8.4V9.6" stroke="currentColor" stroke-width="1.3"/>',
  fail: '<path d="M.5.5H11.5V11.5H.5Z M3 4.2 4.2 3 6 4.8 7.8 3 9 4.2 7.2 6 9 7.8 7.8 9 6 7.2 4.2 9 3 7.8 4.8 6Z" fill="currentColor" fill-rule="evenodd"/>',
  open: '<circle cx="6" cy="6" r="5" fill="none" stroke="currentColor" stroke-dasharray="2 1.6"/><path d="M3.6 6H8.4" stroke="currentColor" stroke-width="1.3"/>',
  none: '<path d="M2 6H10" stroke="currentColor"/>',
};

/** The mark as markup; the words beside it say the same, so readers of the page's text skip it. */
export function outcomeMark(form: OutcomeForm): string {
  return `<svg class="mark" data-form="${form}" viewBox="0 0 ${SIZE} ${SIZE}" width="${SIZE}" height="${SIZE}" aria-hidden="true">${DRAWINGS[form]}</svg>`;
}
