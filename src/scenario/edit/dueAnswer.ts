/**
 * Which answer tells what came of something that is asked for now. What is under way was asked for before; all that is asked for
 * meanwhile is answered together, by the next one.
 *
 * @param answers number of answers so far
 * @param pending an answer to something else is on its way
 * @returns number of answers from which on it has been answered
 */
export function dueAnswer(answers: number, pending: boolean): number {
  return answers + (pending ? 2 : 1);
}
