import { type Command, Option } from 'commander';
import { type CompareCommandOptions, compareCommand } from './compareCommand.ts';
import type { CliIo, ExitCode } from './io.ts';
import { type PlanCommandOptions, planCommand } from './planCommand.ts';
import { type SuitabilityCommandOptions, suitabilityCommand } from './suitabilityCommand.ts';
import { type WearCommandOptions, wearCommand } from './wearCommand.ts';

/** Adds the verbs that judge a starter, or many. */
export function addJudgementVerbs(program: Command, io: CliIo, leave: (code: ExitCode) => void): void {
  const units = () =>
    new Option('--units <SYSTEM>', 'units of report and terminal').choices(['si', 'us']).default('si');
  program
    .command('suitability')
    .description('judge whether plugging suits the load, and what else would stop it')
    .argument('<FILE>')
    .option('--out <DIR>', 'folder for the report (default: reports/NAME-OF-THE-FILE)')
    .option('--json', 'print the judgement as JSON; writes files only together with --out')
    .addOption(units())
    .option('--extremes', 'find how far inertia, rate, resistor, dead time and switch may go; takes minutes')
    .action((file: string, options: SuitabilityCommandOptions) => {
      leave(suitabilityCommand(file, options, io));
    });
  program
    .command('compare')
    .description('judge two scenarios and set them side by side')
    .argument('<A>')
    .argument('<B>')
    .option('--out <DIR>', 'folder for the comparison (default: reports/NAME-OF-A-and-NAME-OF-B)')
    .option('--json', 'print the comparison as JSON; writes a file only together with --out')
    .addOption(units())
    .action((a: string, b: string, options: CompareCommandOptions) => {
      leave(compareCommand(a, b, options, io));
    });
  program
    .command('plan')
    .description(
      'when the contacts of many starters are due: a table in, a list, a report and a calendar out',
    )
    .argument('<TABLE>', 'CSV, one starter a row')
    .option('--out <DIR>', 'folder for the plan (default: reports/NAME-OF-THE-FILE)')
    .option(
      '--as-of <DATE>',
      'day from which the plan looks ahead, YYYY-MM-DD (default: latest date in the table)',
    )
    .addOption(new Option('--units <SYSTEM>', 'units of the report').choices(['si', 'us']).default('si'))
    .action((file: string, options: PlanCommandOptions) => {
      leave(planCommand(file, options, io));
    });
  program
    .command('wear')
    .description('what a log of operations has used up of the contacts, and what is left')
    .argument('<FILE>', 'scenario with a section contactors')
    .argument('<LOG>', 'CSV with the columns time and operation')
    .option('--json', 'print the figures as JSON')
    .option(
      '--as-of <DATE>',
      'day up to which the log counts, YYYY-MM-DD (default: that of its last operation)',
    )
    .action((file: string, log: string, options: WearCommandOptions) => {
      leave(wearCommand(file, log, options, io));
    });
}
