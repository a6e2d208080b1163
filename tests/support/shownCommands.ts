import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { runCommand } from './commandLine.ts';
import { codeBlocks } from './markdown.ts';
import { folderWithExamples } from './workFolder.ts';

/** One `npm start …` of a page. */
export interface StartCommand {
  /** Words after npm's own. */
  readonly args: readonly string[];
  /** File that the output goes into, of `> FILE`. */
  readonly into: string | null;
  /** Exit code that the page states, `# exit 3`; 0 where it states none. */
  readonly exit: number;
  /** Without `--silent` npm's own lines stand before the output. */
  readonly isSilent: boolean;
}

/** Commands that stand together on a page, to be run one after another in one folder. */
export interface ShownCommands {
  /** Page and line. */
  readonly place: string;
  readonly commands: readonly StartCommand[];
  /** Other lines of a shell, as they stand. */
  readonly others: readonly string[];
  /** What the page shows of their output; null where it shows none. */
  readonly output: string | null;
}

const START = /^npm start(?= |$)/u;
/** What only a shell understands, beside one `> FILE` at the end. */
const NEEDS_SHELL = /[|&;<$`]|>.*>/u;
/** A word in capitals stands for what the reader puts there. */
const PLACEHOLDER = /^[A-Z]+$/u;

/** Commands of a page: its `sh` fences with the `text` fence that follows, and what stands in cells of tables. */
export function shownCommands(page: string, markdown: string): ShownCommands[] {
  const blocks = codeBlocks(markdown);
  const fenced = blocks.flatMap((block, index) => {
    if (block.language !== 'sh') return [];
    const next = blocks[index + 1];
    const output = next?.language === 'text' && follows(markdown, block.line, next.line) ? next.text : null;
    return [{ place: `${page}:${block.line}`, ...readLines(block.text), output }];
  });
  const cells = markdown.split('\n').flatMap((line, index) => {
    const spans = line.startsWith('|') ? [...line.matchAll(/`(npm start [^`]+)`/gu)] : [];
    return spans.map(([, text]) => ({ place: `${page}:${index + 1}`, ...readLines(text!), output: null }));
  });
  return [...fenced, ...cells.filter(({ commands }) => !commands.some(isPattern))];
}

/** Commands in the comments at the head of an example, each at the beginning of a line or after `Run it:`. */
export function commandsInComments(file: string, text: string): ShownCommands[] {
  return text.split('\n').flatMap((line, index) => {
    const command = /^#\s+(?:Run it:\s+)?(npm start .*?)(?:\s{2,}.*)?$/u.exec(line)?.[1];
    return command === undefined
      ? []
      : [{ place: `${file}:${index + 1}`, ...readLines(command), output: null }];
  });
}

/** Nothing but the end of the first fence and empty lines stands between two fences. */
function follows(markdown: string, first: number, second: number): boolean {
  const between = markdown.split('\n').slice(first, second - 1);
  return between.slice(between.indexOf('```') + 1).every((line) => line === '');
}

function isPattern({ args }: StartCommand): boolean {
  return args.some((word) => PLACEHOLDER.test(word));
}

function readLines(text: string): Pick<ShownCommands, 'commands' | 'others'> {
  const commands: StartCommand[] = [];
  const others: string[] = [];
  for (const line of text.replaceAll(/\\\n\s*/gu, ' ').split('\n')) {
    const [, command = '', comment = ''] = /^(.*?)(?:(?:^|\s+)#(.*))?$/u.exec(line)!;
    const exit = /^ exit (\d)$/u.exec(comment)?.[1];
    const last = commands.at(-1);
    if (command === '') {
      if (exit !== undefined && last !== undefined)
        commands[commands.length - 1] = { ...last, exit: Number(exit) };
    } else if (START.test(command) && !NEEDS_SHELL.test(command))
      commands.push({ ...readStart(command), exit: Number(exit ?? 0) });
    else others.push(command);
  }
  return { commands, others };
}

function readStart(command: string): Omit<StartCommand, 'exit'> {
  const [, silent = '', rest = ''] = /^npm start( --silent)?(?: --(?= |$))?(.*)$/u.exec(command)!;
  const [, line = '', into = null] = /^(.*?)(?:\s+>\s*(\S+))?$/u.exec(rest)!;
  const args = [...line.matchAll(/"([^"]*)"|'([^']*)'|(\S+)/gu)].map(([, a, b, c]) => a ?? b ?? c!);
  return { args, into, isSilent: silent !== '' };
}

/** Verbs that may say something on standard error though all is well: how long it will take, what to do next. */
export const TALKS: ReadonlySet<string | undefined> = new Set(['survey', 'new']);

/** What commands gave: what a terminal shows, and each exit code with the messages beside it. */
export interface Printed {
  readonly text: string;
  readonly ends: readonly { readonly exit: number | null; readonly err: string }[];
}

/** Runs commands one after another in one folder that holds the examples. */
export async function runShown(commands: readonly StartCommand[]): Promise<Printed> {
  const folder = folderWithExamples();
  const ends: Printed['ends'][number][] = [];
  let text = '';
  for (const { args, into } of commands) {
    const { exit, out, err } = await runCommand(folder, args);
    if (into === null) text += out;
    else writeFileSync(path.join(folder, into), out);
    if (!TALKS.has(args[0])) text += err;
    ends.push({ exit, err });
  }
  return { text: path.sep === '/' ? text : text.replaceAll(/\\(?=\S)/gu, '/'), ends };
}

/** Every kind of space counts as a plain one, for nobody sees which it is; spaces at the end of a line do not count. */
const linesOf = (text: string): string[] =>
  text
    .replace(/\n$/u, '')
    .replaceAll(/\p{Zs}/gu, ' ')
    .split('\n')
    .map((line) => line.trimEnd());

/**
 * Where a page shows what was not printed. Lines must be equal and in order; one of only `…` stands for any number of lines.
 *
 * @returns the first shown line that is not at its place, and what is printed there; null where all is as shown
 */
export function wrongLine(
  shown: string,
  printed: string,
): { readonly shown: string; readonly printed: string } | null {
  const there = linesOf(printed);
  let at = 0;
  let isFree = false;
  const pieces = linesOf(shown);
  for (const [index, line] of pieces.entries()) {
    if (line === '…') {
      isFree = true;
      continue;
    }
    if (isFree) {
      const run = pieces.slice(index, endOfRun(pieces, index));
      const isLast = index + run.length === pieces.length;
      const found = isLast ? fromTheEnd(run, there, at) : firstFrom(run, there, at);
      if (found === null) return { shown: line, printed: `(not after line ${at})` };
      at = found;
      isFree = false;
    }
    if (there[at] !== line) return { shown: line, printed: there[at] ?? '(the end)' };
    at += 1;
  }
  return isFree || at === there.length ? null : { shown: '(the end)', printed: there[at]! };
}

function endOfRun(lines: readonly string[], from: number): number {
  const end = lines.indexOf('…', from);
  return end < 0 ? lines.length : end;
}

function standsAt(run: readonly string[], lines: readonly string[], at: number): boolean {
  return run.every((line, index) => lines[at + index] === line);
}

function firstFrom(run: readonly string[], lines: readonly string[], from: number): number | null {
  for (let at = from; at + run.length <= lines.length; at += 1) if (standsAt(run, lines, at)) return at;
  return null;
}

function fromTheEnd(run: readonly string[], lines: readonly string[], from: number): number | null {
  const at = lines.length - run.length;
  return at >= from && standsAt(run, lines, at) ? at : null;
}
