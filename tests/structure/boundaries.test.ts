import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { importBreaches, impurities, type SourceFile, undocumentedExports } from '../support/sourceRules.ts';

const SRC = fileURLToPath(new URL('../../src/', import.meta.url));

const files: readonly SourceFile[] = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .filter((path) => /\.tsx?$/u.test(path) && !path.endsWith('.d.ts'))
  .map((path) => ({ path: path.replaceAll('\\', '/'), text: readFileSync(join(SRC, path), 'utf8') }));

const planted = (path: string, text: string): SourceFile[] => [{ path, text }];

describe('the rooms', () => {
  it('are all read', () => {
    const rooms = new Set(files.map(({ path }) => path.split('/')[0]));
    for (const room of ['numeric', 'scenario', 'machine', 'shaft', 'starter', 'simulate', 'measure'])
      expect(rooms).toContain(room);
  });

  it('import only rooms before them, and the solver only through its adapter', () => {
    expect(importBreaches(files)).toEqual([]);
  });

  it('other than the edges touch no files, terminal, document, clock or chance', () => {
    expect(impurities(files)).toEqual([]);
  });

  it('explain every name they export', () => {
    expect(undocumentedExports(files)).toEqual([]);
  });
});

describe('a planted breach is found', () => {
  it.each([
    ['an import from a later room', 'machine/x.ts', "import { run } from '../simulate/run.ts';"],
    [
      'a type import from a later room',
      'shaft/x.ts',
      "import type { Step } from '../simulate/odexAdapter.ts';",
    ],
    ['a re-export from a later room', 'numeric/x.ts', "export { shaftOf } from '../shaft/shaft.ts';"],
    [
      'a dynamic import from a later room',
      'machine/x.ts',
      "const m = await import('../measure/measure.ts');",
    ],
    ['an import written as a type', 'machine/x.ts', "let s: import('../simulate/segment.ts').Segment;"],
    ['an unknown room', 'machine/x.ts', "import { y } from '../helpers/y.ts';"],
    ['the index from a room', 'machine/x.ts', "import { simulate } from '../index.ts';"],
    ['the command line in the index', 'index.ts', "export { main } from './cli/main.ts';"],
    ['the page in the command line', 'cli/x.ts', "import { effectiveTheme } from '../page/theme.ts';"],
    ['a component in a pure room', 'report/x.ts', "import { Part } from '../page/Part.tsx';"],
    ['the solver in a component', 'page/X.tsx', "import { Solver } from '#odex'; const a = <p>{Solver}</p>;"],
    ['data of the project in a pure room', 'report/x.ts', "import text from '../../examples/a.yaml?raw';"],
    ['the solver beside its adapter', 'simulate/x.ts', "import { Solver } from '#odex';"],
    ['the solver by its own name', 'measure/x.ts', "import { Solver } from 'odex';"],
  ])('%s', (_name, path, text) => {
    expect(importBreaches(planted(path, text)).length).toBe(1);
  });

  it.each([
    ['a Node module', "import { readFileSync } from 'node:fs';"],
    ['the process', 'export const home = process.env.HOME;'],
    ['the console', "console.log('x');"],
    ['the clock', 'const now = Date.now();'],
    ['a new date', 'const now = new Date();'],
    ['chance', 'const x = Math.random();'],
    ['the document', "document.title = 'x';"],
    ['the window', 'const w = window;'],
    ['a shorthand', 'const o = { process };'],
  ])('%s in a pure room', (_name, text) => {
    expect(impurities(planted('measure/x.ts', text)).length).toBe(1);
    expect(impurities(planted('cli/x.ts', text))).toEqual([]);
  });

  it.each([
    'export function f() {}',
    'export const X = 1;',
    'export interface I {}',
    'export type T = 1;',
    'export class E extends Error {}',
  ])('no doc comment: %s', (text) => {
    expect(undocumentedExports(planted('machine/x.ts', text)).length).toBe(1);
    expect(undocumentedExports(planted('machine/x.ts', `/** Words. */\n${text}`))).toEqual([]);
  });

  it('no doc comment on a component', () => {
    const text = 'export function Part() { return <p>{1}</p>; }';
    expect(undocumentedExports(planted('page/Part.tsx', text)).length).toBe(1);
    expect(undocumentedExports(planted('page/Part.tsx', `/** Words. */\n${text}`))).toEqual([]);
  });

  it('and what is none is let be', () => {
    const text =
      "import { a } from './a.ts';\nimport { z } from 'zod';\nconst y = { Date: 1, process: 2 }.Date; // process.exit";
    expect(importBreaches(planted('measure/x.ts', text))).toEqual([]);
    const example = "import text from '../../examples/a.yaml?raw';";
    expect(importBreaches(planted('page/x.ts', example))).toEqual([]);
    expect(impurities(planted('measure/x.ts', text))).toEqual([]);
    expect(
      undocumentedExports(planted('measure/x.ts', "export { a } from './a.ts';\nfunction inner() {}")),
    ).toEqual([]);
  });
});
