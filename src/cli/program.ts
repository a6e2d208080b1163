import { CommanderError } from 'commander';
import { JournalError } from '../pool/journalError.ts';
import { ScenarioError } from '../scenario/scenarioError.ts';
import { buildProgram } from './buildProgram.ts';
import { InputError } from './inputError.ts';
import { type CliIo, EXIT, type ExitCode } from './io.ts';

/**
 * Runs one command line.
 *
 * @param args what follows the program's name
 * @returns exit code; everything is printed through `io`
 */
export async function runCli(args: readonly string[], io: CliIo): Promise<ExitCode> {
  let exit: ExitCode = EXIT.done;
  const program = buildProgram(io, (code) => {
    exit = code;
  });
  try {
    await program.parseAsync([...args], { from: 'user' });
    return exit;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.done : EXIT.inputError;
    if (error instanceof ScenarioError || error instanceof InputError || error instanceof JournalError) {
      io.err(`${error.message}\n`);
      return EXIT.inputError;
    }
    throw error;
  }
}
