/** The rules that every notebook is held to, on pieces that break them, and the tool on notebooks that cannot be run. */
import { describe, expect, it } from 'vitest';
import { readNotebook } from '../../notebooks/tools/notebook.ts';
import { runNotebook } from '../../notebooks/tools/runNotebook.ts';
import { withResults } from '../../notebooks/tools/withResults.ts';
import {
  cellFaults,
  foreignImports,
  looseNumbers,
  ownPhysics,
  silentReplacements,
} from '../support/notebookRules.ts';

const withCode = (code: string, prose = '') =>
  readNotebook('98-trial', `# Trial?\n\n\`\`\`ts\n${code}\n\`\`\`\n${prose}`);
const failure = async (code: string, prose = '') =>
  runNotebook(withCode(code, prose)).then(
    () => 'no failure',
    (error: Error) => error.message,
  );

describe('a number of the text', () => {
  it.each([
    'It takes 77 s.',
    'It takes 77s.',
    'It is −77 N·m.',
    'From 2–77 s.',
    'It is -77.5 N·m.',
    'Some 77 000 A.',
  ])('that nothing gives is found: %s', (sentence) => {
    expect(looseNumbers(`# Trial?\n\n${sentence}\n`)).toHaveLength(1);
  });

  it.each(['Category AC-3 of IEC 60947-4-1.', 'With 3 phases.', '**77**<!-- = x --> s.', 'As `77` in code.'])(
    'that is a name, small, computed or code is none: %s',
    (sentence) => {
      expect(looseNumbers(`# Trial?\n\n${sentence}\n`)).toEqual([]);
    },
  );

  it('that stands in a cell is given; one that only a result shows is not', () => {
    expect(looseNumbers('```ts\nconst a = 77;\n```\n\n```text\n78\n```\n\n77 or 78\n')).toEqual(['78']);
  });
});

it.each([
  ["import { a } from '../src/index.ts';", '../src/index.ts'],
  ['import { execSync } from "node:child_process";', 'node:child_process'],
  ["import 'left-pad';", 'left-pad'],
  ["const a = await import('node:os');", 'import()'],
  ["const a = process.getBuiltinModule('os');", 'process'],
  ["const a = await fetch('data:,');", 'fetch'],
])('%s leads out of the public API', (code, found) => {
  expect(foreignImports(withCode(code))).toEqual([found]);
});

it.each(['Math.exp(1)', 'Math["exp"](1)', 'const M = Math;', '2 ** 3', 'Math.sin(0)'])(
  '%s is physics of its own',
  (code) => {
    expect(ownPhysics(withCode(code))).toHaveLength(1);
  },
);

it('a replacement that may find nothing is found, one of a sign is none', () => {
  expect(
    silentReplacements(withCode("a.replace('poles: 4', 'poles: 6'); b.replace('-', '−');")),
  ).toHaveLength(1);
});

it('a type error is found at its line', () => {
  expect(cellFaults([withCode("const a = 1;\nconst b: number = 'x';\nexport { a, b };")])).toEqual([
    expect.stringMatching(/^notebooks\/98-trial\.md:5 /u),
  ]);
}, 60_000);

describe('a notebook that cannot be run', () => {
  it.each([
    ['throws', "throw new Error('no such motor');", '', /^notebooks\/98-trial\.md:4: no such motor$/u],
    ['is no TypeScript', 'const a = ;', '', /^notebooks\/98-trial\.md:4: Unexpected/u],
    [
      'imports something else',
      "import { a } from 'left-pad'; a();",
      '',
      /"left-pad" cannot be imported; expected countertorque/u,
    ],
    ['never stops printing', "for (;;) console.log('x'.repeat(1000));", '', /does it end\?$/u],
    [
      'names what is not there',
      '',
      '**1**<!-- = nowhere -->\n',
      /^notebooks\/98-trial\.md:6: nowhere is not defined$/u,
    ],
    [
      'reads a figure that a run lacks',
      'const m = null as { x: number } | null; m!.x;',
      '',
      /is null: does it still start/u,
    ],
    [
      'replaces what is not there',
      "replaced('poles: 4', 'poles: 8', 'poles: 6');",
      '',
      /"poles: 8" does not stand/u,
    ],
  ])('because it %s says where and why', async (_, code, prose, message) => {
    expect(await failure(code, prose)).toMatch(message);
  });

  it('because a comment is filled by nothing says where', () => {
    expect(() => withCode('', '**1** <!-- = a -->\n')).toThrow(/98-trial\.md:6: this is filled by nothing/u);
  });

  it('because two figures have one name says which', () => {
    const figure = {
      id: 'twice',
      title: '',
      note: '',
      description: '',
      x: { label: '', domain: [0, 1] as const },
      panels: [],
      marks: [],
      bands: [],
    };
    const both = { cells: [{ printed: '', figures: [figure, figure] }], stated: [] };
    expect(() => withResults(withCode(''), both)).toThrow(/two figures "twice"/u);
  });
});

it('results are put where they belong and nothing else is changed', async () => {
  const notebook = withCode(
    'const a = 2;\nconsole.log(a);',
    '\n```text\nold\n```\n\nIt is **?**<!-- = a.toFixed(1) -->.\n',
  );
  const { text } = withResults(notebook, await runNotebook(notebook));
  expect(text).toBe(
    '# Trial?\n\n```ts\nconst a = 2;\nconsole.log(a);\n```\n\n```text\n2\n```\n\nIt is **2.0**<!-- = a.toFixed(1) -->.\n',
  );
});
