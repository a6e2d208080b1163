import { CAUTIONS } from '../cautions.ts';
import { formatInstant, type UnitSystem } from '../formatQuantity.ts';
import { sha256Base64 } from '../sha256.ts';
import type { Answer } from './answers.ts';
import { FAULT_CHOICES, faultsInWords, judgeFault } from './faultChoices.ts';
import { unhide } from './hiddenFault.ts';
import { judgeGuess } from './judgeGuess.ts';
import type { Lesson } from './lesson.ts';
import { CHANGE_OVER_CHOICES, isChangeOverChoice, QUESTIONS, type QuestionKey } from './question.ts';
import { guessText } from './readGuess.ts';

/** What an answer sheet is made of. */
export interface AnswerSheetSource {
  /** Of the scenario. */
  readonly title: string;
  /** The scenario's text, for the fingerprint: two sheets with the same one are about the same run. */
  readonly text: string;
  readonly lesson: Lesson;
  readonly answers: ReadonlyMap<QuestionKey, Answer>;
  readonly units: UnitSystem;
  /** Of the program. */
  readonly version: string;
}

/** One question on the sheet. */
export interface SheetQuestion {
  readonly name: string;
  readonly sentence: string;
  /** As the student wrote it; '' where nothing was written. */
  readonly prediction: string;
  /** What the run gives, with its detail; '' while it has not been seen. */
  readonly actual: string;
  /** How far the prediction is from it; '' where one of the two is missing. */
  readonly comparison: string;
}

/** One value read from the machine. */
export interface SheetReading {
  /** "t = 1.2000 s" */
  readonly instant: string;
  readonly label: string;
  readonly text: string;
}

/** What the student holds to be wrong, and what is. */
export interface SheetFault {
  /** '' where nothing was answered. */
  readonly answer: string;
  readonly where: string;
  /** '' while it has not been seen. */
  readonly truth: string;
  readonly comparison: string;
}

/** An answer sheet as data; no field of it depends on a clock. */
export interface AnswerSheet {
  readonly title: string;
  /** SHA-256 of the scenario's text, base64. */
  readonly fingerprint: string;
  readonly student: string;
  readonly version: string;
  readonly questions: readonly SheetQuestion[];
  readonly readings: readonly SheetReading[];
  /** null in a lesson without a hidden fault. */
  readonly fault: SheetFault | null;
  readonly cautions: readonly string[];
}

/** Gathers predictions, readings and answers; what has not been revealed stays off the sheet. */
export function answerSheet(source: AnswerSheetSource): AnswerSheet {
  const { title, text, lesson, version } = source;
  return {
    title,
    fingerprint: sha256Base64(text),
    student: lesson.student,
    version,
    questions: lesson.questions.map((key) => sheetQuestion(key, source)),
    readings: lesson.readings.flatMap(({ t, rows }) =>
      rows.map(({ label, text: read }) => ({ instant: `t = ${formatInstant(t)}`, label, text: read })),
    ),
    fault: lesson.mode === 'hiddenFault' ? sheetFault(lesson) : null,
    cautions: CAUTIONS,
  };
}

function sheetQuestion(key: QuestionKey, { lesson, answers, units }: AnswerSheetSource): SheetQuestion {
  const question = QUESTIONS[key];
  const prediction = lesson.predictions[key];
  const answer = lesson.revealed.includes(key) ? answers.get(key) : undefined;
  const detail = answer === undefined || answer.detail === '' ? '' : ` (${answer.detail})`;
  return {
    name: question.name,
    sentence: question.sentence,
    prediction: prediction === undefined ? '' : predictionText(prediction.text, prediction.value, key, units),
    actual: answer === undefined ? '' : `${answer.text}${detail}`,
    comparison:
      prediction === undefined || answer === undefined
        ? ''
        : judgeGuess(prediction.value, answer.value, question),
  };
}

/** As written, and how it was understood where the two differ. */
function predictionText(text: string, value: number | string, key: QuestionKey, units: UnitSystem): string {
  if (isChangeOverChoice(value)) return CHANGE_OVER_CHOICES[value];
  if (typeof value === 'string') return text;
  const understood = guessText(value, QUESTIONS[key], units);
  return text.trim() === understood ? understood : `${text.trim()} (${understood})`;
}

function sheetFault({ faultAnswer, faultRevealed, hidden }: Lesson): SheetFault {
  const faults = faultRevealed && hidden !== null ? unhide(hidden) : null;
  return {
    answer: faultAnswer === null ? '' : FAULT_CHOICES[faultAnswer.kind],
    where: faultAnswer?.where ?? '',
    truth: faults === null ? '' : faultsInWords(faults),
    comparison: faults === null || faultAnswer === null ? '' : judgeFault(faultAnswer.kind, faults).words,
  };
}
