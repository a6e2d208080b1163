import { existsSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { Argument, Command, Option } from 'commander';
import { scenarioJsonSchema } from '../scenario/scenarioJsonSchema.ts';
import { surveyJsonSchema } from '../survey/spec/surveyJsonSchema.ts';
import { checkCommand } from './checkCommand.ts';
import { exitHelp } from './exitMeanings.ts';
import { InputError } from './inputError.ts';
import type { CliIo, ExitCode } from './io.ts';
import { addJudgementVerbs } from './judgementVerbs.ts';
import { motorCommand } from './motorCommand.ts';
import { addNewVerb } from './newVerb.ts';
import { type SimulateOptions, simulateCommand } from './simulateCommand.ts';
import { addStarterVerbs } from './starterVerbs.ts';
import { addSurveyVerbs } from './surveyVerbs.ts';
import { VERSION } from './version.ts';

/** Scenario that runs when no file is named, relative to the package. */
const BUILT_IN = '../../examples/engineer/may-this-belt-be-plugged.yaml';

/** Schemas of the kinds of files a person writes. */
const SCHEMAS = { scenario: scenarioJsonSchema, survey: surveyJsonSchema };

const NEXT_COMMANDS = `
Next:
  npm start -- examples/engineer/should-this-fan-be-plugged.yaml
  npm start -- examples/teacher/what-does-a-full-reversal-cost.yaml --units us
  npm start -- check examples/engineer/may-this-belt-be-plugged.yaml
`;

/** Takes the exit code that a verb ends with. */
export type Leave = (code: ExitCode) => void;

/**
 * The program with all its verbs, options and arguments; nothing runs before it parses a command line.
 *
 * @param io everything is printed through it
 * @param leave takes the exit code of the verb that ran
 */
export function buildProgram(io: CliIo, leave: Leave): Command {
  const program = new Command('countertorque')
    .description('Simulates plugging: start, phase exchange and stop of a cage induction motor.')
    .version(VERSION)
    .usage('[VERB] [FILE] [options]')
    .argument('[FILE]', 'scenario to simulate (YAML or JSON); without one a built-in example runs')
    .allowExcessArguments() // told apart below: a verb that does not exist, or two files
    .enablePositionalOptions()
    .showHelpAfterError('(countertorque --help lists verbs and options)')
    .addHelpText('after', exitHelp())
    .helpCommand(true)
    .hook('preAction', (_, verb) => refuseNamelessFolder(verb))
    .hook('preSubcommand', (_, verb) => refuseEarlyOptions(program, verb.name()));
  withRunOptions(program).action((file: string | undefined, options: SimulateOptions) => {
    if (file !== undefined) refuseVerb(program, io);
    leave(file === undefined ? builtIn(options, io) : simulateCommand(file, options, io));
  });
  withRunOptions(
    program
      .command('simulate')
      .description('simulate a scenario and write its report')
      .argument('<FILE>', 'scenario (YAML or JSON)'),
  ).action((file: string, options: SimulateOptions) => leave(simulateCommand(file, options, io)));
  addJudgementVerbs(program, io, leave);
  addSurveyVerbs(program, io, leave);
  program
    .command('check')
    .description('check a scenario or a survey without running it')
    .argument('<FILE>', 'scenario or survey (YAML or JSON)')
    .action((file: string) => leave(checkCommand(file, io)));
  addNewVerb(program, io, leave);
  withRunOptions(
    program
      .command('motor')
      .description("print a scenario's motor by itself and draw its curves")
      .argument('<FILE>', 'scenario (YAML or JSON)'),
  ).action((file: string, options: SimulateOptions) => leave(motorCommand(file, options, io)));
  addStarterVerbs(program, io, leave);
  program
    .command('schema')
    .description('print the JSON Schema of scenario or survey files, for editors')
    .addArgument(
      new Argument('[KIND]', 'kind of file').choices(Object.keys(SCHEMAS)).default('scenario' as const),
    )
    .action((kind: keyof typeof SCHEMAS) => io.out(`${JSON.stringify(SCHEMAS[kind](), null, 2)}\n`));
  for (const verb of program.commands) verb.allowExcessArguments(false);
  for (const command of [program, ...program.commands])
    command.exitOverride().configureOutput({ writeOut: io.out, writeErr: io.err });
  return program;
}

/** The first word is taken for a file when it is no verb; says so when it is no file either. */
function refuseVerb(program: Command, io: CliIo): void {
  const [first = '', second] = program.args;
  const isWord = /^[a-z]+$/i.test(first) && !existsSync(path.resolve(io.cwd, first));
  if (isWord) {
    const verbs = program.commands.map((command) => command.name()).join(', ');
    throw new InputError(`${first}: neither a verb (${verbs}) nor a scenario file (….yaml, ….json)`);
  }
  if (second !== undefined) throw new InputError(`${second}: one word too many; expected one scenario file`);
}

/** An option before the verb would belong to no run; it must not be passed over in silence. */
function refuseEarlyOptions(program: Command, verb: string): void {
  const early = Object.keys(program.opts()).find((name) => program.getOptionValueSource(name) === 'cli');
  if (early !== undefined)
    throw new InputError(`--${early} stands before ${verb}; options go at the end of the line`);
}

/** An empty name would be the working folder; it is refused before anything runs. */
function refuseNamelessFolder(verb: Command): void {
  const { out } = verb.opts<{ readonly out?: string }>();
  if (out?.trim() === '')
    throw new InputError(`--out ${JSON.stringify(out)}: nothing is named; expected a folder`);
}

function builtIn(options: SimulateOptions, io: CliIo): ExitCode {
  const exit = simulateCommand(fileURLToPath(new URL(BUILT_IN, import.meta.url)), options, io);
  if (options.json !== true) io.out(NEXT_COMMANDS);
  return exit;
}

function withRunOptions(command: Command): Command {
  return command
    .option('--out <DIR>', 'folder for the report (default: reports/NAME-OF-THE-FILE)')
    .option('--json', 'print the figures as JSON; writes files only together with --out')
    .addOption(
      new Option('--units <SYSTEM>', 'units of report and terminal').choices(['si', 'us']).default('si'),
    )
    .option('--ascii', 'draw the torque trace in plain ASCII');
}
