import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { PROJECT, runCommand } from '../support/commandLine.ts';
import { EXAMPLES } from '../support/examples.ts';
import { commandsInComments, runShown, shownCommands, wrongLine } from '../support/shownCommands.ts';
import { workFolder } from '../support/workFolder.ts';
import { COMMANDS, SHOWN } from './allShown.ts';
import { expectAsShown } from './expectAsShown.ts';

describe('the command', () => {
  it.each(COMMANDS.map((same) => [same.title, same] as const))(
    '%s does what the pages say',
    async (_title, same) => expectAsShown(same),
  );

  it('stands with --silent where its output is shown, for npm writes lines of its own', () => {
    const loud = SHOWN.filter(
      ({ output, commands }) => output !== null && !commands.every((c) => c.isSilent),
    );
    expect(loud.map(({ place }) => place)).toEqual([]);
  });

  it('of each verb is shown', async () => {
    const { out } = await runCommand(workFolder(), ['--help']);
    const verbs = [...out.matchAll(/^ {2}([a-z]+)(?: \[| <| {2})/gmu)].map(([, verb]) => verb!);
    const first = new Set(COMMANDS.flatMap(({ shown }) => shown[0]!.commands.map(({ args }) => args[0])));
    expect(verbs.length).toBeGreaterThan(10);
    expect(verbs.filter((verb) => !UNSHOWN.has(verb) && !first.has(verb))).toEqual([]);
  });
});

/** Verbs of which no page need show a command. */
const UNSHOWN = new Map([
  ['help', 'lists the others'],
  ['simulate', 'is what a file alone does'],
  ['merge', 'needs the parts of a survey: run in schedulers.test.ts'],
]);

/** Lines of `sh` fences that are not run here. */
const NOT_RUN: readonly { readonly line: RegExp; readonly why: string }[] = [
  { line: /^npm ci\b/u, why: 'installs; the automatic checks begin with it' },
  { line: /^npm test$/u, why: 'is what runs this' },
  {
    line: /^npm run [\w:]+(?: -- [\w -]+)?$/u,
    why: 'the script has tests of its own; that it exists is tested below',
  },
  { line: /^sh tests\/schedulers\/run\.sh$/u, why: 'needs the schedulers themselves' },
];

it('whatever else stands in a shell fence is known, with the reason why it is not run here', () => {
  const unknown = SHOWN.flatMap(({ place, others }) =>
    others
      .filter((line) => !NOT_RUN.some((known) => known.line.test(line)))
      .map((line) => `${place}: ${line}`),
  );
  expect(unknown).toEqual([]);
});

it('every npm script in a shell fence exists', () => {
  const { scripts } = JSON.parse(readFileSync(path.join(PROJECT, 'package.json'), 'utf8'));
  const named = SHOWN.flatMap(({ others }) =>
    others.flatMap((line) => [...line.matchAll(/\bnpm (?:run ([\w:]+)|(start|test)\b)/gu)]),
  ).map(([, run, own]) => run ?? own!);
  expect(new Set(named).size).toBeGreaterThanOrEqual(3);
  expect(named.filter((name) => scripts[name] === undefined)).toEqual([]);
});

describe('the page of its folder', () => {
  it.each(EXAMPLES)('tells of $file under its question, with a command that runs it', ({ name, file }) => {
    const page = path.posix.join(path.posix.dirname(file), 'README.md');
    const sections = readFileSync(path.join(PROJECT, page), 'utf8').split(/^## /mu).slice(1);
    const slug = (section: string) =>
      section.split('\n')[0]!.toLowerCase().replace(/[?,]/gu, '').replaceAll(' ', '-');
    const own = sections.filter((section) => slug(section) === name.replace(/\.\w+$/u, ''));
    expect(own).toHaveLength(1);
    const [shown] = shownCommands(page, own[0]!);
    expect(shown?.commands[0]?.args).toContain(file);
    expect(shown?.output).not.toBeNull();
  });
});

const WRITES = 'survey examples/engineer/how-long-does-the-belt-take-to-stop.yaml --run 0';

describe('the checker', () => {
  const page = (output: string, command = 'npm start --silent -- --version') =>
    shownCommands('page.md', `\`\`\`sh\n${command}\n\`\`\`\n\n\`\`\`text\n${output}\`\`\`\n`);
  const same = (shown: ReturnType<typeof page>) => ({ title: '', shown });

  it('takes words, quotes, continued lines, stated exits and a file for the output apart', () => {
    const fence =
      '```sh\nnpm start --silent -- new a.yaml \\\n  --power "15 kW" # exit 3\nnpm start -- b > c.yaml\n# exit 1\n```\n';
    expect(shownCommands('page.md', fence)[0]!.commands).toEqual([
      { args: ['new', 'a.yaml', '--power', '15 kW'], into: null, exit: 3, isSilent: true },
      { args: ['b'], into: 'c.yaml', exit: 1, isSilent: false },
    ]);
  });

  it('finds commands in cells and comments, and leaves patterns alone', () => {
    const cells = shownCommands(
      'page.md',
      '| a | `npm start -- check a.yaml` | `npm start -- VERB FILE` |\n',
    );
    expect(cells.map(({ commands }) => commands[0]!.args)).toEqual([['check', 'a.yaml']]);
    const comment =
      '# Run it:  npm start -- a.yaml # exit 3\n#   npm start -- b.yaml   the run\n# see `npm start -- c`\n';
    expect(commandsInComments('a.yaml', comment).map(({ commands }) => commands[0])).toEqual([
      { args: ['a.yaml'], into: null, exit: 3, isSilent: false },
      { args: ['b.yaml'], into: null, exit: 0, isSilent: false },
    ]);
  });

  it('takes no output for shown that stands after other text', () => {
    const apart = '```sh\nnpm start -- a\n```\n\nWords.\n\n```text\nb\n```\n';
    expect(shownCommands('page.md', apart)[0]!.output).toBeNull();
  });

  it('hands what needs a shell to the list of what is not run', () => {
    const [shown] = shownCommands('page.md', '```sh\nnpm ci && npm start\nnpm start -- a | head\n```\n');
    expect(shown!.commands).toEqual([]);
    expect(shown!.others).toEqual(['npm ci && npm start', 'npm start -- a | head']);
  });

  it.each([
    ['a\nb\nc\nd', null],
    ['a\n…\nd', null],
    ['…\nb\nc\n…', null],
    ['…\nd', null],
    ['a\nb\nx\nd', { shown: 'x', printed: 'c' }],
    ['a\nc\nd', { shown: 'c', printed: 'b' }],
    ['a\nb', { shown: '(the end)', printed: 'c' }],
    ['a\nb\nc\nd\ne', { shown: 'e', printed: '(the end)' }],
    ['…\nc\n…\nb\n…', { shown: 'b', printed: '(not after line 3)' }],
    ['a\n…\nc', { shown: 'c', printed: '(not after line 1)' }],
    ['a  \nb\nc\nd', null],
  ])('holds the shown lines %j against a, b, c, d', (shown, wrong) => {
    expect(wrongLine(`${shown}\n`, 'a\nb\nc\nd\n')).toEqual(wrong);
  });

  it('passes the real output and fails on a wrong line, a missing line and a wrong exit code', async () => {
    const [real] = page('');
    const { text } = await runShown(real!.commands);
    await expectAsShown(same(page(text)));
    await expect(expectAsShown(same(page(`x${text}`)))).rejects.toThrow();
    await expect(expectAsShown(same(page(`${text}more\n`)))).rejects.toThrow();
    await expect(
      expectAsShown(same(page(text, 'npm start --silent -- --version # exit 3'))),
    ).rejects.toThrow();
  });

  it('hands the file that one command writes to the next', async () => {
    const two = `npm start --silent -- ${WRITES} > run.yaml\nnpm start --silent -- check run.yaml`;
    await expectAsShown(same(page('run.yaml: in order (Tea-withering belt, 7.5 kW)\n', two)));
  });
});
