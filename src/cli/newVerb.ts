import type { Command } from 'commander';
import type { CliIo, ExitCode } from './io.ts';
import { type NewOptions, newCommand } from './newCommand.ts';
import { flagOf, hintOf } from './question.ts';
import { QUESTIONS } from './questions.ts';

const EXAMPLE = `
What no option says is asked for in a terminal; elsewhere it is not known.
Needed: power, voltage, frequency, and poles or speed.

  npm start -- new drive.yaml --power "7.5 kW" --voltage "400 V" \\
    --frequency "50 Hz" --speed "1455 rpm" --load friction --load-torque "20 N m"
`;

/** Adds the verb `new`, with an option for every question. */
export function addNewVerb(program: Command, io: CliIo, done: (exit: ExitCode) => void): void {
  const verb = program
    .command('new')
    .description('write a scenario from a nameplate, asking line by line')
    .argument('[FILE]', 'file to write; standard output without one, or with -')
    .option('--force', 'write over a file that is there')
    .option('--no-questions', 'ask nothing')
    .addHelpText('after', EXAMPLE)
    .action(async (file: string | undefined, options: NewOptions) => {
      done(await newCommand(file, options, io));
    });
  for (const question of QUESTIONS)
    verb.option(`${flagOf(question)} <VALUE>`, `${question.asks.toLowerCase()} (${hintOf(question)})`);
}
