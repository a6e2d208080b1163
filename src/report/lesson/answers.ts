import type { MetricKey } from '../../measure/metric.ts';
import { formatMultiple, formatQuantity } from '../formatQuantity.ts';
import type { NumberRow } from '../live/numberRows.ts';
import type { RunView } from '../live/runView.ts';
import {
  CHANGE_OVER_CHOICES,
  type ChangeOverChoice,
  QUESTION_KEYS,
  QUESTIONS,
  type Question,
  type QuestionKey,
} from './question.ts';

/** What the run answers to a question. */
export interface Answer {
  readonly question: Question;
  /** SI, or the choice that holds. */
  readonly value: number | ChangeOverChoice;
  /** With unit, as everywhere else on the page. */
  readonly text: string;
  /** Multiple, phase and instant; may be empty. */
  readonly detail: string;
  /** What exactly was measured. */
  readonly definition: string;
}

/** What of a run answers questions. */
export type AnswerSource = Pick<RunView, 'numbers' | 'units'>;

/** A peak that differs by less than this share counts as the same. A convention of the question, stated in its words. */
const ALIKE = 0.1;

/** The answers that a run has, by question, in their order; a question whose metric the run lacks is not among them. */
export function answersOf(source: AnswerSource): ReadonlyMap<QuestionKey, Answer> {
  const rows = new Map(source.numbers.flatMap((group) => group.rows).map((row) => [row.key, row]));
  const found = QUESTION_KEYS.flatMap((key): [QuestionKey, Answer][] => {
    const question = QUESTIONS[key];
    const answer = question.kind === 'choice' ? changeOver(rows, source) : measured(question, rows);
    return answer === null ? [] : [[key, answer]];
  });
  return new Map(found);
}

type Rows = ReadonlyMap<MetricKey, NumberRow>;
type Present = NumberRow & { readonly value: number };

function present(rows: Rows, key: MetricKey): Present | null {
  const row = rows.get(key);
  return row === undefined || row.value === null ? null : { ...row, value: row.value };
}

function measured(question: Question, rows: Rows): Answer | null {
  const own = question.answeredBy.map((key) => present(rows, key)).filter((row) => row !== null);
  const first = own[0];
  if (first === undefined) return null;
  const row =
    question.take === 'first'
      ? first
      : own.reduce((worst, next) => (Math.abs(next.value) > Math.abs(worst.value) ? next : worst), first);
  const { value, detail, definition } = row;
  const said = question.after === '' || row.text.endsWith(question.after);
  return { question, value, text: said ? row.text : `${row.text} ${question.after}`, detail, definition };
}

function changeOver(rows: Rows, { units }: AnswerSource): Answer | null {
  const gap = present(rows, 'extinctionToTouch');
  const plug = present(rows, 'plugPeakCurrent');
  const start = present(rows, 'startPeakCurrent');
  if (gap === null || plug === null || start === null || start.value === 0) return null;
  const ratio = plug.value / start.value;
  const value = choiceOf(gap.value, ratio);
  const length = formatQuantity(gap.value, 's', { system: units, milli: true });
  return {
    question: QUESTIONS.changeOver,
    value,
    text: CHANGE_OVER_CHOICES[value],
    detail: `${value === 'goesOn' ? '' : `without current for ${length}; `}peak ${formatMultiple(ratio, 'that of the start')}`,
    definition: `${gap.definition} ${plug.definition} ${start.definition}`,
  };
}

function choiceOf(gap: number, ratio: number): ChangeOverChoice {
  if (gap <= 0) return 'goesOn';
  if (ratio > 1 + ALIKE) return 'larger';
  return ratio < 1 - ALIKE ? 'smaller' : 'alike';
}
