import { CAUTIONS } from '../cautions.ts';
import { formatInstant, type UnitSystem } from '../formatQuantity.ts';
import { sha256Base64 } from '../sha256.ts';
import { FAULT_CHOICES, faultsInWords, judgeFault } from './faultChoices.ts';
import { unhide } from './hiddenFault.ts';
import type { Lesson, Prediction } from './lesson.ts';
import { QUESTIONS, type QuestionKey } from './question.ts';
import { guessText } from './readGuess.ts';

/** What an answer sheet is made of. */
export interface AnswerSheetSource {
  /** Of the scenario. */
  readonly title: string;
  /** Text of the scenario that is shown. */
  readonly text: string;
  readonly lesson: Lesson;
  /** For predictions whose answer has not been seen; a seen one keeps the units it was seen in. */
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
  /** Of the text whose run gave the answer, SHA-256 in base64; '' while it has not been seen. */
  readonly fingerprint: string;
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
  /** Of the scenario that the first answer is of; before any is seen, of the one that is shown. */
  readonly title: string;
  /** SHA-256 of that scenario's text, base64: two sheets with the same one are about the same run. */
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
  const first = lesson.revealed.map((key) => lesson.seen[key]?.of).find((of) => of !== undefined);
  return {
    ...(first ?? { title, fingerprint: sha256Base64(text) }),
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

function sheetQuestion(key: QuestionKey, { lesson, units }: AnswerSheetSource): SheetQuestion {
  const { name, sentence } = QUESTIONS[key];
  const prediction = lesson.predictions[key];
  const seen = lesson.revealed.includes(key) ? lesson.seen[key] : undefined;
  const understood =
    prediction === undefined ? '' : (seen?.prediction ?? guessText(prediction.value, QUESTIONS[key], units));
  return {
    name,
    sentence,
    prediction: prediction === undefined ? '' : predictionText(prediction, understood),
    actual: seen === undefined ? '' : `${seen.text}${seen.detail === '' ? '' : ` (${seen.detail})`}`,
    comparison: seen?.comparison ?? '',
    fingerprint: seen?.of.fingerprint ?? '',
  };
}

/** As written, and how it was understood where the two differ. */
function predictionText({ text, value }: Prediction, understood: string): string {
  return typeof value === 'string' || text.trim() === understood
    ? understood
    : `${text.trim()} (${understood})`;
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

/** Questions whose answers are of another text than the sheet's own, one entry for each such text. */
export function foreignAnswers(
  sheet: AnswerSheet,
): readonly { readonly fingerprint: string; readonly names: readonly string[] }[] {
  const foreign = sheet.questions.filter(
    ({ fingerprint }) => fingerprint !== '' && fingerprint !== sheet.fingerprint,
  );
  return [...new Set(foreign.map(({ fingerprint }) => fingerprint))].map((fingerprint) => ({
    fingerprint,
    names: foreign.filter((one) => one.fingerprint === fingerprint).map(({ name }) => name),
  }));
}
