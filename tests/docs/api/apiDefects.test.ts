import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { apiDefects } from './apiDefects.ts';
import { COMPLETE, readMadeUp } from './madeUp.ts';
import { sourceDefects } from './sourceDefects.ts';

/** Made-up modules by name: what they hold, and the one thing that is missing in them. */
const MODULES: Readonly<Record<string, readonly [text: string, defect: string]>> = {
  bareFunction: ['export function bare(): void {}', 'bareFunction.bare has no doc comment'],
  bareType: ['export interface Bare {}', 'Bare has no doc comment'],
  bareConstant: ["export const BARE = 'x';", 'BARE has no doc comment'],
  property: [
    '/** A box. */\nexport interface Box { readonly colour: string; }',
    'property.Box.colour has no words',
  ],
  innerProperty: [
    '/** A box. */\nexport interface Box {\n/** Its lid. */ readonly lid: { readonly open: boolean } | null; }',
    'innerProperty.Box.lid.open has no words',
  ],
  parameter: [
    '/** Paints. */\nexport function paint(colour: string): void {}',
    'parameter.paint.colour has no words',
  ],
  propertyUnit: [
    '/** A box. */\nexport interface Box {\n/** How wide it is. */ readonly width: number; }',
    'propertyUnit.Box.width is a number without a unit',
  ],
  article: [
    '/** A box. */\nexport interface Box {\n/** A width that it has. */ readonly width: number | null; }',
    'article.Box.width is a number without a unit',
  ],
  parameterUnit: [
    '/** Widens.\n * @param by how far */\nexport function widen(by: number): void {}',
    'parameterUnit.widen.by is a number without a unit',
  ],
  resultUnit: [
    '/** The width. */\nexport function width(): number { return 1; }',
    'the result of resultUnit.width is a number without a unit',
  ],
  methodUnit: [
    '/** A box. */\nexport interface Box {\n/** Its width after some `time`, s. */ width(time: number, tries: number): void; }',
    'methodUnit.Box.width.tries is a number without a unit',
  ],
  unionUnit: [
    "/** A shape. */\nexport type Shape =\n  /** Round: `radius`, m. */\n  | { readonly kind: 'disc'; readonly radius: number }\n  | { readonly kind: 'square'; readonly side: number };",
    'unionUnit.Shape.side is a number without a unit',
  ],
  shape: [
    '/** Loads.\n * @param forces N */\nexport function load(forces: readonly number[]): void {}',
    'shape.load.forces does not say how its numbers are laid out',
  ],
  typedArray: [
    '/** A run. */\nexport interface Run {\n/** Torque, N·m. */ readonly torque: Float64Array; }',
    'typedArray.Run.torque does not say how its numbers are laid out',
  ],
  columns: [
    '/** A run. */\nexport interface Run {\n/** In SI. */ readonly all: Readonly<Record<string, Float64Array>>; }',
    'columns.Run.all does not say how its numbers are laid out',
  ],
  thrown: [
    "/** Checks. */\nexport function check(): void { throw new RangeError('no'); }",
    'check throws RangeError without saying so',
  ],
  thrownInside: [
    "/** Wrong. */\nexport class OddError extends Error {}\nconst inner = () => { throw new OddError('no'); };\n/** Checks all.\n * @throws TypeError never */\nexport function checkAll(): void { [1].forEach(inner); }",
    'checkAll throws OddError without saying so',
  ],
  thrownPastCatch: [
    "/** Goes on.\n * @throws SyntaxError as told */\nexport function goOn(): void { try { one(); } catch (error) { if (!(error instanceof RangeError)) throw error; } }\nfunction one(): void { if (Math.abs(1)) throw new RangeError('a'); if (Math.abs(2)) throw new SyntaxError('b'); throw new TypeError('c'); }",
    'goOn throws TypeError without saying so',
  ],
  hidden: [
    '/** A part. */\ninterface Part {}\n/** A whole. */\nexport interface Whole { readonly part: Part; }',
    'Part, defined in * is referenced by hidden.Whole.part but not included in the documentation',
  ],
  address: [
    '/** See https://made-up.example/page. */\nexport function see(): void {}',
    'address.see leads to the network',
  ],
  link: [
    '/** See {@link nothingThere}. */\nexport function see(): void {}',
    'Failed to resolve link to "nothingThere" in comment for link.see',
  ],
};

let folder: string;
let defects: readonly string[];
let unsourced: readonly string[];

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'countertorque-'));
  const texts = Object.entries(MODULES).map(([name, [text]]) => [name, text] as const);
  const api = await readMadeUp(folder, { ...Object.fromEntries(texts), complete: COMPLETE });
  defects = apiDefects(api);
  unsourced = sourceDefects(api.project, ['mean', 'calm', 'gone']);
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A defect with the place in the file system left out. */
const plain = (defect: string) => defect.replace(/(?<=defined in ).*(?= is referenced)/u, '*');

describe('what is missing is found', () => {
  it.each(Object.entries(MODULES))('in the module %s', (_name, [, expected]) => {
    expect(defects.map(plain).filter((defect) => defect.includes(expected))).toHaveLength(1);
  });

  it('and nothing else', () => {
    const expected = Object.values(MODULES).map(([, found]) => found);
    expect(defects.map(plain).filter((defect) => !expected.some((one) => defect.includes(one)))).toEqual([]);
  });

  it('and so is a published method without its source', () => {
    expect(unsourced).toEqual(['calm names no source', 'gone names no source']);
  });
});
