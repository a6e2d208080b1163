import type { Command } from 'commander';
import { EXIT_MEANINGS } from '../../../src/cli/exitMeanings.ts';
import { code, GENERATED, markdownTable, paragraph } from './markdownTable.ts';
import type { VerbNote } from './verbNotes.ts';

/** What a run of an example printed on standard output, by verb. */
export type Outputs = Readonly<Record<string, string>>;

const INTRO = `${GENERATED}
# Commands

Every verb of the command line, with its arguments, options and exit codes, and a command that works on an example of the
project. Commands start in the project's folder. What a program is to read goes to standard output, what a person is to
know besides goes to standard error; \`--silent\` keeps npm itself quiet.

\`countertorque --help\` and \`countertorque VERB --help\` say the same in short; in a copy of the project that is
\`npm start -- --help\`.
`;

/** The page of all commands. */
export function commandsPage(
  program: Command,
  notes: Readonly<Record<string, VerbNote>>,
  outputs: Outputs,
): string {
  const verbs = program.commands;
  const glance = markdownTable(
    ['verb', 'does'],
    verbs.map((verb) => [`[${verb.name()}](#${verb.name()})`, verb.description()]),
  );
  const sections = verbs.map((verb) => verbSection(verb, notes[verb.name()]!, outputs[verb.name()] ?? ''));
  return [INTRO, `## At a glance\n\n${glance}`, exitSection(), ...sections].join('\n');
}

function exitSection(): string {
  const rows = Object.entries(EXIT_MEANINGS).flatMap(([exit, meanings]) =>
    meanings.map(({ verbs, means }) => [exit, verbs === 'all' ? 'every verb' : verbs.join(', '), means]),
  );
  return `## Exit codes\n\n${markdownTable(['code', 'verb', 'means'], rows)}`;
}

function verbSection(verb: Command, note: VerbNote, output: string): string {
  const args = verb.registeredArguments.map((argument) => [
    code(nameOf(argument.name(), argument.required, argument.variadic)),
    argument.description === '' ? whatFileIs(argument.name()) : argument.description,
    (argument.argChoices ?? []).map(code).join(', '),
    defaultOf(argument.defaultValue),
  ]);
  const options = verb.options.map((option) => {
    const [meaning, told] = splitDefault(option.description);
    return [
      code(option.flags),
      `${meaning}${option.mandatory ? ' (needed)' : ''}`,
      (option.argChoices ?? []).map(code).join(', '),
      told ?? (option.negate ? '' : defaultOf(option.defaultValue)),
    ];
  });
  const exits = Object.entries(EXIT_MEANINGS).filter(([, meanings]) =>
    meanings.some(({ verbs }) => verbs === 'all' || verbs.includes(verb.name())),
  );
  return [
    `## ${verb.name()}\n`,
    `${code(`npm start -- ${usage(verb)}`)}\n`,
    paragraph(note.does),
    ...(args.length > 0 ? [markdownTable(['argument', 'is', 'choices', 'default'], args)] : []),
    ...(options.length > 0 ? [markdownTable(['option', 'does', 'choices', 'default'], options)] : []),
    `Exit codes: ${exits.map(([exit]) => exit).join(', ')}.\n`,
    example(note, output),
  ].join('\n');
}

function usage(verb: Command): string {
  const words = verb.registeredArguments.map((argument) =>
    nameOf(argument.name(), argument.required, argument.variadic),
  );
  return [verb.name(), ...words, ...(verb.options.length > 0 ? ['[options]'] : [])].join(' ');
}

function nameOf(name: string, required: boolean, variadic: boolean): string {
  const full = variadic ? `${name}...` : name;
  return required ? `<${full}>` : `[${full}]`;
}

/** The program leaves arguments unexplained whose name says what they are. */
function whatFileIs(name: string): string {
  return name === 'FILE' ? 'scenario (YAML or JSON)' : `scenario ${name} (YAML or JSON)`;
}

function defaultOf(value: unknown): string {
  return typeof value === 'string' ? code(value) : '';
}

/** Defaults that depend on other words stand in the description: "folder (default: reports/NAME)". */
function splitDefault(description: string): readonly [string, string | undefined] {
  const found = /^(.*) \(default: (.*)\)$/u.exec(description);
  return found === null ? [description, undefined] : [found[1]!, found[2]!];
}

function example({ example: words, lines }: VerbNote, output: string): string {
  const command = `\`\`\`sh\nnpm start --silent -- ${words.map(quoted).join(' ')}\n\`\`\`\n`;
  if (lines === 0) return command;
  const all = output.trimEnd().split('\n');
  const shown = all.length > lines ? [...all.slice(0, lines), '…'] : all;
  return `${command}\n\`\`\`text\n${shown.map((line) => line.trimEnd()).join('\n')}\n\`\`\`\n`;
}

function quoted(word: string): string {
  return word.includes(' ') ? `"${word}"` : word;
}

/** Verbs that the page says nothing of, and notes of verbs that do not exist. */
export function unmatchedVerbs(program: Command, notes: Readonly<Record<string, VerbNote>>): string[] {
  const verbs = program.commands.map((verb) => verb.name());
  return [
    ...verbs.filter((verb) => notes[verb] === undefined),
    ...Object.keys(notes).filter((verb) => !verbs.includes(verb)),
  ];
}
