import { readFileSync } from 'node:fs';
import path from 'node:path';
import { PROJECT } from '../support/commandLine.ts';
import { EXAMPLES } from '../support/examples.ts';
import { markdownPages } from '../support/markdown.ts';
import { commandsInComments, type ShownCommands, shownCommands } from '../support/shownCommands.ts';

const read = (file: string) => readFileSync(path.join(PROJECT, file), 'utf8');

/** Pages for users and developers; those below tests/ describe tests. */
export const PAGES = markdownPages().filter((page) => !page.startsWith('tests/'));

/** All commands of pages and examples. */
export const SHOWN: readonly ShownCommands[] = [
  ...PAGES.flatMap((page) => shownCommands(page, read(page))),
  ...EXAMPLES.filter(({ name }) => name.endsWith('.yaml')).flatMap(({ file }) =>
    commandsInComments(file, read(file)),
  ),
];

/** The same commands wherever they are shown: they run once. */
export interface SameCommands {
  readonly title: string;
  readonly shown: readonly ShownCommands[];
}

const titleOf = ({ commands }: ShownCommands) =>
  commands
    .map(({ args, into }) => [...args, ...(into === null ? [] : ['>', into])].join(' ') || '(no words)')
    .join(', then ');

/** Commands that are run elsewhere, and why. */
export const ELSEWHERE: ReadonlyMap<string, string> = new Map([
  [
    'merge reports/part-1 reports/part-2 --out reports/whole',
    'needs parts of a survey: schedulers.test.ts makes some',
  ],
]);

const runnable = SHOWN.filter((shown) => shown.commands.length > 0 && !ELSEWHERE.has(titleOf(shown)));

/** Every command with the places that show it. */
export const COMMANDS: readonly SameCommands[] = [...new Set(runnable.map(titleOf))].map((title) => ({
  title,
  shown: runnable.filter((shown) => titleOf(shown) === title),
}));
