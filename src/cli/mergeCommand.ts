import { statSync } from 'node:fs';
import path from 'node:path';
import { JOURNAL_NAME } from '../pool/journal.ts';
import { mergeJournals } from '../pool/mergeJournals.ts';
import { InputError, reasonOf } from './inputError.ts';
import { type CliIo, EXIT, type ExitCode } from './io.ts';
import { surveyFiles } from './surveyFiles.ts';
import { VERSION } from './version.ts';

/** Options of the command as the command line gives them. */
export interface MergeCommandOptions {
  readonly out: string;
  readonly units: 'si' | 'us';
}

/** Joins the shards of a survey and writes tables and report as if it had been made in one piece. */
export function mergeCommand(parts: readonly string[], options: MergeCommandOptions, io: CliIo): ExitCode {
  const { survey, rows } = mergeJournals(
    parts.map((part) => journalOf(part, io)),
    path.resolve(io.cwd, options.out, JOURNAL_NAME),
  );
  const units = options.units === 'us' ? 'us' : 'SI';
  const report = { units, version: VERSION, shard: null, folder: options.out } as const;
  surveyFiles(survey, rows, report, options.out, io);
  return EXIT.done;
}

/** A part is a folder with a journal, or the journal. */
function journalOf(part: string, io: CliIo): string {
  const full = path.resolve(io.cwd, part);
  try {
    return statSync(full).isDirectory() ? path.join(full, JOURNAL_NAME) : full;
  } catch (error) {
    throw new InputError(`${part}: ${reasonOf(error)}; expected the folder of a shard`);
  }
}
