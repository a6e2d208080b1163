import { existsSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { parseScenarioWithOrigins } from '../estimate/parseScenarioWithOrigins.ts';
import type { NewScenarioAnswers, SufficientAnswers } from '../report/newScenarioAnswers.ts';
import { renderNewScenario } from '../report/renderNewScenario.ts';
import { shellWord } from '../report/shellWord.ts';
import type { Problem } from '../scenario/problem.ts';
import { ScenarioError } from '../scenario/scenarioError.ts';
import { askQuestions } from './askQuestions.ts';
import { flagAnswers, missingAnswers } from './flagAnswers.ts';
import { InputError, reasonOf } from './inputError.ts';
import { type CliIo, EXIT, type ExitCode } from './io.ts';
import { flagOf } from './question.ts';
import { QUESTIONS, questionAt } from './questions.ts';
import { assertSolvable } from './solvable.ts';

/** What the command line asks of a new scenario; every answer by its key besides. */
export interface NewOptions extends Readonly<Record<string, unknown>> {
  /** Write over a file that is there. */
  readonly force?: boolean;
  /** False: nothing is asked, what no option says is not known. */
  readonly questions: boolean;
}

/** Stands for standard output in place of a file. */
const STANDARD_OUTPUT = '-';

/**
 * Writes a scenario from answers, asked for in a terminal or given by options.
 *
 * @param file where to; standard output without one
 */
export async function newCommand(
  file: string | undefined,
  options: NewOptions,
  io: CliIo,
): Promise<ExitCode> {
  const target = file === STANDARD_OUTPUT ? undefined : file;
  if (target !== undefined && options.force !== true && existsSync(path.resolve(io.cwd, target)))
    throw new InputError(`${target}: is there already; expected a new name, or --force to write over it`);
  const { answers: given, faults } = flagAnswers(options);
  if (faults.length > 0) throw new InputError(faults.join('\n'));
  const text =
    io.ask === undefined || options.questions === false
      ? withoutAsking(given)
      : await byAsking(given, io.ask, io);
  if (text === null) {
    io.err('\nEnded; nothing was written.\n');
    return EXIT.inputError;
  }
  if (target === undefined) {
    io.out(text);
    io.err('Next: save it as a file, such as motor.yaml, then  npm start -- motor.yaml\n');
  } else {
    write(target, text, options.force === true, io);
    const word = shellWord(target);
    io.out(`${target}: written\n\nNext:\n  npm start -- check ${word}\n  npm start -- ${word}\n`);
  }
  return EXIT.done;
}

function withoutAsking(given: NewScenarioAnswers): string {
  const missing = missingAnswers(given);
  if (missing.length > 0) throw new InputError(missing.join('\n'));
  const written = compose(given);
  if ('text' in written) return written.text;
  throw new InputError(written.problems.map(problemLine).join('\n'));
}

/** Asks what no option answers; where the answers contradict each other, asks about these once more. */
async function byAsking(
  given: NewScenarioAnswers,
  ask: NonNullable<CliIo['ask']>,
  io: CliIo,
): Promise<string | null> {
  const say = (line: string) => io.err(`${line}\n`);
  say('A new scenario. Enter: not known. Ctrl-C ends without a file.');
  let questions = QUESTIONS.filter(({ key }) => given[key] === undefined);
  let answers = given;
  for (;;) {
    const asked = await askQuestions(questions, answers, ask, say);
    if (asked === null) return null;
    answers = asked;
    const written = compose(answers);
    if ('text' in written) {
      say('');
      return written.text;
    }
    say('\nThis cannot be used:');
    for (const problem of written.problems) say(`  ${problemLine(problem)}`);
    say('\nOnce more. Enter keeps the answer in brackets; - takes it back.');
    const groups = new Set(written.problems.map(({ path: at }) => questionAt(at)?.group));
    questions = QUESTIONS.filter(({ group }) => groups.has(group) || groups.has(undefined));
  }
}

/** Writes the scenario and reads it back: what was not known then has its replacement, and it is sure to run. */
function compose(
  answers: NewScenarioAnswers,
): { readonly text: string } | { readonly problems: readonly Problem[] } {
  try {
    const sufficient = answers as SufficientAnswers;
    const { scenario, origins } = parseScenarioWithOrigins(renderNewScenario(sufficient, []));
    assertSolvable(scenario);
    return { text: renderNewScenario(sufficient, origins) };
  } catch (error) {
    if (error instanceof ScenarioError) return { problems: error.problems };
    throw error;
  }
}

/** A problem by the option that is answerable for it: nobody has seen the file yet. */
function problemLine({ path: at, message, expected }: Problem): string {
  const question = questionAt(at);
  const key = at.slice(at.lastIndexOf('.') + 1);
  const name =
    question === undefined
      ? at
      : `${question.asks} (${flagOf(question)})${key === 'pickUpSpeed' ? ', pick-up speed' : ''}`;
  return `${name}: ${message}; expected ${expected}`;
}

function write(target: string, text: string, force: boolean, io: CliIo): void {
  try {
    writeFileSync(path.resolve(io.cwd, target), text, { flag: force ? 'w' : 'wx' });
  } catch (error) {
    throw new InputError(`${target}: ${reasonOf(error)}; expected a file that can be written`);
  }
}
