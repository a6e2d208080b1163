import path from 'node:path';
import ts from 'typescript';
import { CELL, type Notebook, STATED } from '../../notebooks/tools/notebook.ts';
import { joinedCells } from '../../notebooks/tools/runNotebook.ts';
import { PROJECT } from './commandLine.ts';

/** Modules a cell may take something from. */
const ALLOWED = new Set(['countertorque', 'countertorque/pool', 'node:fs']);

/** Imports of a notebook's cells from anywhere but the public API (and files). */
export function foreignImports({ cells }: Notebook): string[] {
  const code = cells.map((cell) => cell.code).join('\n');
  const from = [...code.matchAll(/\bfrom '([^']+)'|\bimport\(|\brequire\(/gu)].map(
    ([all, name]) => name ?? all,
  );
  return from.filter((name) => !ALLOWED.has(name));
}

/** Signs that a cell works out something that the package should: trigonometry, exponentials, powers. */
export function ownPhysics({ cells }: Notebook): string[] {
  return cells
    .flatMap(({ code }) => [
      ...code.matchAll(
        /Math\.(?!abs|max|min|round|floor|ceil|sign|hypot|PI|SQRT2)\w+|\*\*|0\.5 \*.*\*\* ?2/gu,
      ),
    ])
    .map(([sign]) => sign);
}

/** Replacements that would silently do nothing once a reader has changed the text; `replaced` says so. */
export function silentReplacements({ cells }: Notebook): string[] {
  return cells
    .flatMap(({ code }) => [...code.matchAll(/\.replace(?:All)?\(\s*'(?!-')[^']*'/gu)])
    .map(([found]) => found);
}

/** A number of prose, with the sign before it; not a part of a word such as AC-3 or IEC 60034-1. */
const NUMBER = /(?<![\w.,–-])\d[\d.,]*(?:\d)?(?![\w-]*[A-Za-z])(?!\w)/gu;
/** What numbers mean nothing to compute: standards, categories, exercises and notebooks by their number. */
const NAMES =
  /\b(?:IEC|NEMA|ISO|ICS|MG|EN)(?: [A-Z]+)? ?[\d.–-]+(?:[-–:]\d+)*|\bAC-\d\b|\b(?:exercise|notebook|example|step|category|class|design)s? \d+\b|^#+ .*$/gimu;

/**
 * Numbers of a notebook's text that are neither computed (bold with an expression) nor given: written in one of its cells, or
 * small whole numbers such as "three phases, 2 of them".
 */
export function looseNumbers(text: string): string[] {
  const code = [...text.matchAll(/^```ts\n[\s\S]*?^```$/gmu)].map(([block]) => block).join('\n');
  const given = new Set([...code.matchAll(/(?<![\w.])\d+(?:\.\d+)?/gu)].map(([number]) => Number(number)));
  const prose = text
    .replaceAll(CELL, '\n')
    .replaceAll(/^```\w*\n[\s\S]*?^```$/gmu, '')
    .replaceAll(STATED, '')
    .replaceAll(/<!--[\s\S]*?-->/gu, '')
    .replaceAll(/\]\([^)]*\)/gu, '')
    .replaceAll(/`[^`]*`/gu, '')
    .replaceAll(NAMES, '');
  return [...prose.matchAll(NUMBER)]
    .map(([number]) => number.replace(/[.,]$/u, ''))
    .filter((number) => !(/^\d+$/u.test(number) && Number(number) <= 4))
    .filter((number) => !given.has(Number(number)));
}

/** Type errors in the cells, at their lines in the notebooks. */
export function cellFaults(notebooks: readonly Notebook[]): string[] {
  const folder = path.join(PROJECT, 'notebooks');
  const texts = new Map(
    notebooks.map((notebook) => [
      path.join(folder, `${notebook.name}.cells.ts`),
      `${joinedCells(notebook, () => '')}\n${notebook.stated.map(({ expression }) => `void (${expression});`).join('\n')}\nexport {};\n`,
    ]),
  );
  const { config } = ts.readConfigFile(path.join(PROJECT, 'tsconfig.json'), ts.sys.readFile);
  const { options } = ts.parseJsonConfigFileContent({ ...config, include: [], files: [] }, ts.sys, PROJECT);
  const host = ts.createCompilerHost(options);
  const { getSourceFile, fileExists, readFile } = host;
  host.fileExists = (file) => texts.has(path.normalize(file)) || fileExists(file);
  host.readFile = (file) => texts.get(path.normalize(file)) ?? readFile(file);
  host.getSourceFile = (file, version, ...rest) => {
    const text = texts.get(path.normalize(file));
    return text === undefined
      ? getSourceFile(file, version, ...rest)
      : ts.createSourceFile(file, text, version);
  };
  const roots = [path.join(folder, 'tools', 'globals.d.ts'), ...texts.keys()];
  const program = ts.createProgram(roots, { ...options, noUnusedLocals: false }, host);
  return [...texts.keys()].flatMap((file) => {
    const source = program.getSourceFile(file)!;
    const found = [...program.getSyntacticDiagnostics(source), ...program.getSemanticDiagnostics(source)];
    return found.map(({ start, messageText }) => {
      const line = source.getLineAndCharacterOfPosition(start ?? 0).line + 1;
      const name = path.basename(file).replace('.cells.ts', '.md');
      return `notebooks/${name}:${line} ${ts.flattenDiagnosticMessageText(messageText, ' ')}`;
    });
  });
}
