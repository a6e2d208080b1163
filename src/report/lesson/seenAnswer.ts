import { sha256Base64 } from '../sha256.ts';
import { type AnswerSource, answersOf } from './answers.ts';
import { judgeGuess } from './judgeGuess.ts';
import type { Prediction } from './lesson.ts';
import { type ChangeOverChoice, QUESTIONS, type QuestionKey } from './question.ts';
import { guessText } from './readGuess.ts';

/** The run that answers are revealed from. */
export interface RevealedRun extends AnswerSource {
  /** Of the scenario. */
  readonly title: string;
  /** The scenario's text, which made the run. */
  readonly text: string;
}

/** The scenario that an answer is of. */
export interface SeenScenario {
  readonly title: string;
  /** SHA-256 of its text, base64. */
  readonly fingerprint: string;
}

/** An answer as it was when it was revealed: whatever is run afterwards, it stays. */
export interface SeenAnswer {
  /** How the prediction was understood, with its unit; '' without one. */
  readonly prediction: string;
  /** SI, or the choice that holds; null: the run has no answer. */
  readonly value: number | ChangeOverChoice | null;
  /** With the unit that was shown then. */
  readonly text: string;
  /** Multiple, phase and instant; may be empty. */
  readonly detail: string;
  /** What exactly was measured; '' without an answer. */
  readonly definition: string;
  /** How far the prediction is from it, in words; '' where one of the two is missing. */
  readonly comparison: string;
  readonly of: SeenScenario;
}

/** Said where a run has no answer. */
const NO_ANSWER = 'not in this run';

/** The answers of a run to these questions, compared with what was predicted. */
export function seenAnswers(
  keys: readonly QuestionKey[],
  predictions: Readonly<Partial<Record<QuestionKey, Prediction>>>,
  run: RevealedRun,
): Readonly<Partial<Record<QuestionKey, SeenAnswer>>> {
  const answers = answersOf(run);
  const of = { title: run.title, fingerprint: sha256Base64(run.text) };
  return Object.fromEntries(
    keys.map((key): [QuestionKey, SeenAnswer] => {
      const question = QUESTIONS[key];
      const guess = predictions[key];
      const prediction = guess === undefined ? '' : guessText(guess.value, question, run.units);
      const answer = answers.get(key);
      if (answer === undefined)
        return [
          key,
          { prediction, value: null, text: NO_ANSWER, detail: '', definition: '', comparison: '', of },
        ];
      const { value, text, detail, definition } = answer;
      const comparison = guess === undefined ? '' : judgeGuess(guess.value, value, question);
      return [key, { prediction, value, text, detail, definition, comparison, of }];
    }),
  );
}
