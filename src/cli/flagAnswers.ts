import type { NewScenarioAnswers } from '../report/newScenarioAnswers.ts';
import { flagOf } from './question.ts';
import { QUESTIONS } from './questions.ts';
import { readAnswer } from './readAnswer.ts';

/** Options of `new` that are answers, and what is wrong with them. */
export interface FlagAnswers {
  readonly answers: NewScenarioAnswers;
  /** One line each, beginning with the option. */
  readonly faults: readonly string[];
}

/**
 * Reads the options of `new` as answers.
 *
 * @param options text by key, as given on the command line
 */
export function flagAnswers(options: Readonly<Record<string, unknown>>): FlagAnswers {
  const faults: string[] = [];
  let answers: NewScenarioAnswers = {};
  for (const question of QUESTIONS) {
    const text = options[question.key];
    if (typeof text !== 'string') continue;
    const read = readAnswer(question, text);
    if ('wrong' in read) faults.push(`${flagOf(question)}: ${read.wrong}`);
    else answers = { ...answers, [question.key]: read.answer };
  }
  for (const question of QUESTIONS) {
    if (options[question.key] !== undefined && question.when?.holds({ ...options, ...answers }) === false)
      faults.push(`${flagOf(question)}: has no meaning here; expected only with ${question.when.words}`);
  }
  return { answers, faults };
}

/** What is needed and has no answer, one line each. */
export function missingAnswers(answers: NewScenarioAnswers): string[] {
  return QUESTIONS.filter(
    ({ key, when, needed }) =>
      answers[key] === undefined && when?.holds(answers) !== false && needed?.(answers) === true,
  ).map((question) => {
    const alternative = question.key === 'poles' ? ', or --speed "1455 rpm"' : '';
    return `${flagOf(question)}: is missing; expected ${question.asks.toLowerCase()}, such as ${flagOf(question)} "${question.example}"${alternative}`;
  });
}
