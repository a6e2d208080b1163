import type { UnitSystem } from '../formatQuantity.ts';
import type { Answer } from './answers.ts';
import { judgeGuess } from './judgeGuess.ts';
import type { Lesson } from './lesson.ts';
import { QUESTIONS, type QuestionKey } from './question.ts';
import { guessText } from './readGuess.ts';

/** A revealed question: what was expected, what the run gives. */
export interface ComparisonRow {
  readonly key: QuestionKey;
  readonly name: string;
  readonly prediction: string;
  readonly answer: string;
  readonly detail: string;
  /** In words; '' without a prediction. */
  readonly comparison: string;
  readonly definition: string;
}

/** Rows of the revealed questions, in their order. */
export function comparisonRows(
  { questions, revealed, predictions }: Lesson,
  answers: ReadonlyMap<QuestionKey, Answer>,
  units: UnitSystem,
): readonly ComparisonRow[] {
  return questions
    .filter((key) => revealed.includes(key))
    .map((key) => {
      const question = QUESTIONS[key];
      const answer = answers.get(key);
      const prediction = predictions[key];
      return {
        key,
        name: question.name,
        prediction: prediction === undefined ? 'none' : guessText(prediction.value, question, units),
        answer: answer?.text ?? 'not in this run',
        detail: answer?.detail ?? '',
        comparison:
          prediction === undefined || answer === undefined
            ? ''
            : judgeGuess(prediction.value, answer.value, question),
        definition: answer?.definition ?? '',
      };
    });
}
