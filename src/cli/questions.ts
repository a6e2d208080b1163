import { DRIVE_QUESTIONS } from './driveQuestions.ts';
import { MOTOR_QUESTIONS } from './motorQuestions.ts';
import type { Question } from './question.ts';

/** Everything `new` asks, in the order in which it asks. */
export const QUESTIONS: readonly Question[] = [...MOTOR_QUESTIONS, ...DRIVE_QUESTIONS];

/** The question whose answer stands at a path of the scenario, or the nearest above it. */
export function questionAt(path: string): Question | undefined {
  const lengthOfMatch = ({ paths }: Question) =>
    Math.max(0, ...paths.map((own) => (path === own || path.startsWith(`${own}.`) ? own.length : 0)));
  return QUESTIONS.filter((question) => lengthOfMatch(question) > 0).toSorted(
    (a, b) => lengthOfMatch(b) - lengthOfMatch(a),
  )[0];
}
