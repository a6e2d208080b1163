/** The page on troubles: one entry for every code, and each message as the program says it today. */
import { expect, it } from 'vitest';
import {
  formatProblem,
  type ProblemCode,
  parseScenario,
  type RunStatusCode,
  ScenarioError,
  simulate,
} from '../../src/index.ts';
import { exampleText } from '../support/examples.ts';
import { expectSection } from '../support/generatedPages.ts';
import { type Change, PROBLEMS, type ShownTrouble, STATUSES } from './troubles.ts';

const PAGE = 'examples/guides/troubleshooting.md';
const FILE = 'belt.yaml';
const BELT = exampleText('may-this-belt-be-plugged');

/** Files that are no change of the example. */
const WHOLE: Readonly<Partial<Record<ProblemCode, string>>> = {
  empty: '# nothing yet\n',
  notText: 'title: Belt\u0000\n',
  tooLarge: 'a'.repeat(300_000),
  tooDeep: `title: ${'['.repeat(40)}\n`,
};

function changed(changes: readonly Change[]): string {
  let text = BELT;
  for (const [before, after] of changes) {
    if (before !== null && !text.includes(before)) throw new Error(`the example has no "${before}"`);
    text = before === null ? `${text}${after}` : text.replace(before, () => after);
  }
  return text;
}

function problemsOf(text: string) {
  try {
    parseScenario(text, { fileName: FILE });
    return [];
  } catch (error) {
    if (error instanceof ScenarioError) return error.problems;
    throw error;
  }
}

/** The lines of a change that a reader would type, and those that are taken away. */
const linesOf = (changes: readonly Change[]) =>
  changes
    .map(([before, after]) =>
      after === '' ? `# without: ${before!.trim()}` : after.replace(/^\n|\n$/gu, ''),
    )
    .join('\n');

function entry(code: string, { means, cure, changes, shown = '' }: ShownTrouble, message: string): string {
  const file = changes.length === 0 ? '' : `\n\`\`\`yaml\n${linesOf(changes)}\n\`\`\`\n`;
  const words = shown === '' ? '' : `\nFor example ${shown}.\n`;
  const said = message === '' ? '' : `\n\`\`\`text\n${message}\n\`\`\`\n`;
  return `\n### ${code}\n\n${means} *What to do:* ${cure}\n${words}${file}${said}`;
}

it('every code of a problem has an entry whose example leads to it', () => {
  const entries = Object.entries(PROBLEMS).map(([code, trouble]) => {
    const problems = problemsOf(WHOLE[code as ProblemCode] ?? changed(trouble.changes));
    const first = problems.find((problem) => problem.code === code);
    if (first === undefined)
      throw new Error(
        `the example of ${code} leads to ${problems.map((one) => one.code).join() || 'nothing'}`,
      );
    return entry(code, trouble, formatProblem(first));
  });
  expectSection(PAGE, 'problems', entries.join(''));
});

it('every status of a run has an entry whose example leads to it', () => {
  const entries = Object.entries(STATUSES).map(([code, trouble]) => {
    if (trouble.shown !== undefined) return entry(code, trouble, '');
    const { status } = simulate(parseScenario(changed(trouble.changes)));
    expect(status.code).toBe(code as RunStatusCode);
    return entry(code, trouble, trouble.changes.length === 0 ? '' : status.message);
  });
  expectSection(PAGE, 'statuses', entries.join(''));
});
