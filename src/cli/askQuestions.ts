import type { NewScenarioAnswers } from '../report/newScenarioAnswers.ts';
import type { CliIo } from './io.ts';
import { hintOf, type Question } from './question.ts';
import { readAnswer } from './readAnswer.ts';

/** Asks one line. */
export type Ask = NonNullable<CliIo['ask']>;

/** What the person types to take back an answer that is offered again. */
const NOT_KNOWN = '-';

/**
 * Asks questions one by one until each has an answer that can be read, or none.
 *
 * @param questions in the order in which they are asked
 * @param before answers so far; one that has an answer already is offered, and Enter keeps it
 * @param say writes a line of explanation
 * @returns all answers, the new ones among them; null when the person ends it
 */
export async function askQuestions(
  questions: readonly Question[],
  before: NewScenarioAnswers,
  ask: Ask,
  say: (line: string) => void,
): Promise<NewScenarioAnswers | null> {
  let answers = before;
  let group: string | undefined;
  for (const question of questions) {
    if (question.when?.holds(answers) === false) {
      answers = without(answers, question);
      continue;
    }
    if (question.group !== group) say(`\n${question.group}`);
    group = question.group;
    const answer = await askOne(question, answers, ask, say);
    if (answer === null) return null;
    answers = answer === undefined ? without(answers, question) : { ...answers, [question.key]: answer };
  }
  return answers;
}

/** @returns null when the person ends it, undefined when it is not known */
async function askOne(
  question: Question,
  answers: NewScenarioAnswers,
  ask: Ask,
  say: (line: string) => void,
): Promise<string | number | null | undefined> {
  const { asks, key } = question;
  const hint = hintOf(question);
  const before = answers[key];
  const needed = question.needed?.(answers) === true;
  const offer = before === undefined ? '' : ` [${before}]`;
  for (;;) {
    const line = await ask(`  ${asks} (${hint})${offer}: `);
    if (line === null) return null;
    const text = line.trim();
    if (text === '' && before !== undefined) return before;
    if (text === '' || (text === NOT_KNOWN && before !== undefined)) {
      if (!needed) return undefined;
      say(`    This one is needed, ${hint}. Ctrl-C ends without a file.`);
      continue;
    }
    const read = readAnswer(question, text);
    if ('wrong' in read) {
      say(`    ${read.wrong}`);
      continue;
    }
    if (read.readBack !== '') say(`    = ${read.readBack}`);
    return read.answer;
  }
}

function without(answers: NewScenarioAnswers, { key }: Question): NewScenarioAnswers {
  const { [key]: _, ...others } = answers;
  return others;
}
