import { type Command, Option } from 'commander';
import type { CliIo, ExitCode } from './io.ts';
import { type MergeCommandOptions, mergeCommand } from './mergeCommand.ts';
import { type SurveyCommandOptions, surveyCommand } from './surveyCommand.ts';

/** Adds the verbs for many runs of one scenario. */
export function addSurveyVerbs(program: Command, io: CliIo, leave: (code: ExitCode) => void): void {
  const units = () =>
    new Option('--units <SYSTEM>', 'units of report and terminal').choices(['si', 'us']).default('si');
  program
    .command('survey')
    .description('make many runs of one scenario with varied fields; an interrupted survey goes on')
    .argument('<FILE>', 'survey (YAML or JSON)')
    .option('--out <DIR>', 'folder for tables, report and journal (default: reports/NAME-OF-THE-FILE)')
    .option('--workers <N>', 'threads (default: as many as the computer runs at once)')
    .option('--shard <I/N>', 'make part I of N only; merge joins the parts')
    .option(
      '--run <K>',
      'print the scenario of run K (from 0) and do nothing else; into a file: npm start --silent -- survey FILE --run K > run.yaml',
    )
    .option('--fresh', 'begin anew; runs that are in the folder are thrown away')
    .addOption(units())
    .action(async (file: string, options: SurveyCommandOptions) => {
      leave(await surveyCommand(file, options, io));
    });
  program
    .command('merge')
    .description('join the parts of a survey that was made in shards')
    .argument('<PART...>', 'folders of all shards')
    .requiredOption('--out <DIR>', 'folder for tables, report and journal')
    .addOption(units())
    .action((parts: string[], options: MergeCommandOptions) => {
      leave(mergeCommand(parts, options, io));
    });
}
