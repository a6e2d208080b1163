import { type Command, Option } from 'commander';
import { type InterlocksOptions, interlocksCommand } from './interlocksCommand.ts';
import type { CliIo, ExitCode } from './io.ts';
import { type LabCommandOptions, labCommand } from './labCommand.ts';
import { type SheetCommandOptions, sheetCommand } from './sheetCommand.ts';
import { type WiringCommandOptions, wiringCommand } from './wiringCommand.ts';

/** Adds the verbs that are about the starter alone. */
export function addStarterVerbs(program: Command, io: CliIo, leave: (code: ExitCode) => void): void {
  program
    .command('interlocks')
    .description('explore every state of the control circuit; without FILE of every scheme')
    .argument('[FILE]')
    .option('--json', 'print the verdicts as JSON')
    .action((file: string | undefined, options: InterlocksOptions) => {
      leave(interlocksCommand(file, options, io));
    });
  program
    .command('sheet')
    .description('write the commissioning sheet: what each test on the bench should show')
    .argument('<FILE>')
    .option('--out <DIR>', 'folder for the sheet (default: reports/NAME-OF-THE-FILE)')
    .addOption(new Option('--units <SYSTEM>', 'units of the sheet').choices(['si', 'us']).default('si'))
    .action((file: string, options: SheetCommandOptions) => {
      leave(sheetCommand(file, options, io));
    });
  program
    .command('lab')
    .description('write a laboratory procedure: what each reading should be, and how far off')
    .argument('<FILE>')
    .option('--out <DIR>', 'folder for the procedure (default: reports/NAME-OF-THE-FILE)')
    .option('--json', 'print the procedure as JSON; writes files only together with --out')
    .option('--blank', 'leave the predictions out, for students who predict first')
    .addOption(
      new Option('--units <SYSTEM>', 'units of sheet and terminal').choices(['si', 'us']).default('si'),
    )
    .action((file: string, options: LabCommandOptions) => {
      leave(labCommand(file, options, io));
    });
  program
    .command('wiring')
    .description('draw power and control circuit; without FILE of every scheme')
    .argument('[FILE]')
    .option('--out <DIR>', 'folder for the drawing (default: reports/NAME-OF-THE-FILE)')
    .addOption(
      new Option('--symbols <SET>', 'graphical symbols: IEC 60617 or North American practice')
        .choices(['iec', 'us'])
        .default('iec'),
    )
    .action((file: string | undefined, options: WiringCommandOptions) => {
      leave(wiringCommand(file, options, io));
    });
}
