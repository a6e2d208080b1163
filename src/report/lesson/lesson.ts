import type { FaultChoice } from './faultChoices.ts';
import type { ChangeOverChoice, QuestionKey } from './question.ts';
import type { Reading } from './readings.ts';
import { type RevealedRun, type SeenAnswer, seenAnswers } from './seenAnswer.ts';

/** predict: numbers first guessed, then seen. hiddenFault: something is wrong, and readings must show what. */
export type LessonMode = 'predict' | 'hiddenFault';

/** A guess that was understood. */
export interface Prediction {
  /** As the student wrote it. */
  readonly text: string;
  /** SI, or a choice. */
  readonly value: number | ChangeOverChoice;
}

/** What a student holds to be wrong. */
export interface FaultAnswer {
  readonly kind: FaultChoice;
  /** Which contactor, which pole, from when: free words. */
  readonly where: string;
}

/** A lesson and how far a student has come in it: plain data that survives JSON. */
export interface Lesson {
  readonly mode: LessonMode;
  /** In the order of asking. */
  readonly questions: readonly QuestionKey[];
  /** Text of `hide`; null where no fault is hidden. */
  readonly hidden: string | null;
  /** Name of the student, free text; it stays in the page and on the sheet, and no link carries it. */
  readonly student: string;
  readonly predictions: Readonly<Partial<Record<QuestionKey, Prediction>>>;
  /** Questions whose answer has been seen. */
  readonly revealed: readonly QuestionKey[];
  /** Their answers, as they were then. */
  readonly seen: Readonly<Partial<Record<QuestionKey, SeenAnswer>>>;
  readonly readings: readonly Reading[];
  readonly faultAnswer: FaultAnswer | null;
  readonly faultRevealed: boolean;
}

/** Readings in one lesson at most: the sheet still prints. */
export const MOST_READINGS = 12;
/** Longest free text of a student, characters. */
export const LONGEST_WORDS = 200;

/** A lesson nobody has begun. */
export function newLesson(
  mode: LessonMode,
  questions: readonly QuestionKey[],
  hidden: string | null,
): Lesson {
  return {
    mode,
    questions: [...new Set(questions)],
    hidden: mode === 'hiddenFault' ? hidden : null,
    student: '',
    predictions: {},
    revealed: [],
    seen: {},
    readings: [],
    faultAnswer: null,
    faultRevealed: false,
  };
}

/** The same lesson with nothing of the student in it: what a link carries. */
export function unbegun({ mode, questions, hidden }: Lesson): Lesson {
  return newLesson(mode, questions, hidden);
}

/** With the student's name. */
export function withStudent(lesson: Lesson, student: string): Lesson {
  return { ...lesson, student: student.slice(0, LONGEST_WORDS) };
}

/** With a guess; null takes it back. A guess whose answer has been seen stays as it was. */
export function withGuess(lesson: Lesson, key: QuestionKey, guess: Prediction | null): Lesson {
  if (!lesson.questions.includes(key) || lesson.revealed.includes(key)) return lesson;
  const { [key]: _, ...others } = lesson.predictions;
  return { ...lesson, predictions: guess === null ? others : { ...others, [key]: guess } };
}

/**
 * Shows the answers of this run to these questions, or to all; from then on their guesses are locked, and the answers stay what they are,
 * whatever is run afterwards.
 */
export function withRevealed(
  lesson: Lesson,
  run: RevealedRun,
  keys: readonly QuestionKey[] = lesson.questions,
): Lesson {
  const { questions, predictions, revealed, seen } = lesson;
  const fresh = questions.filter((key) => keys.includes(key) && !revealed.includes(key));
  if (fresh.length === 0) return lesson;
  return {
    ...lesson,
    revealed: questions.filter((key) => fresh.includes(key) || revealed.includes(key)),
    seen: { ...seen, ...seenAnswers(fresh, predictions, run) },
  };
}

/** With one more reading, in the order of taking; the oldest goes where there would be too many. */
export function withReading(lesson: Lesson, reading: Reading): Lesson {
  return lesson.faultRevealed
    ? lesson
    : { ...lesson, readings: [...lesson.readings, reading].slice(-MOST_READINGS) };
}

/** Without the reading at a place of the list. */
export function withoutReading(lesson: Lesson, index: number): Lesson {
  return lesson.faultRevealed
    ? lesson
    : { ...lesson, readings: lesson.readings.filter((_, i) => i !== index) };
}

/** With what the student holds to be wrong; once the truth is seen it stays as it was. */
export function withFaultAnswer(lesson: Lesson, answer: FaultAnswer | null): Lesson {
  if (lesson.faultRevealed) return lesson;
  return {
    ...lesson,
    faultAnswer: answer === null ? null : { ...answer, where: answer.where.slice(0, LONGEST_WORDS) },
  };
}

/** Shows what is really wrong. */
export function withFaultRevealed(lesson: Lesson): Lesson {
  return lesson.mode === 'hiddenFault' ? { ...lesson, faultRevealed: true } : lesson;
}

/** True while numbers and pictures of the run must stay covered: a question is asked whose answer has not been seen. */
export function isCovered(lesson: Lesson | null): boolean {
  return lesson?.questions.some((key) => !lesson.revealed.includes(key)) ?? false;
}

/** True while the page must not say what is wrong: show `concealed(view)` then. */
export function isConcealing(lesson: Lesson | null): boolean {
  return lesson !== null && lesson.mode === 'hiddenFault' && !lesson.faultRevealed;
}
