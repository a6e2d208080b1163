import path from 'node:path';
import ts from 'typescript';
import { CELL, type Notebook, STATED } from '../../notebooks/tools/notebook.ts';
import { joinedCells } from '../../notebooks/tools/runNotebook.ts';
import { PROJECT } from './commandLine.ts';

/** Modules a cell may take something from. */
const ALLOWED = new Set(['countertorque', 'countertorque/pool', 'node:fs']);
/** Global names that lead out of the notebook. */
const OUTSIDE = new Set([
  'process',
  'globalThis',
  'global',
  'fetch',
  'require',
  'eval',
  'Function',
  'WebSocket',
]);
/** What a cell may take of Math: nothing that a law of physics would need. */
const PLAIN_MATHS = new Set(['abs', 'max', 'min', 'round', 'floor', 'ceil', 'sign', 'hypot', 'PI', 'SQRT2']);

/** Every node of the cells' code. */
function nodesOf({ cells }: Notebook): ts.Node[] {
  const code = cells.map((cell) => cell.code).join('\n');
  const nodes: ts.Node[] = [];
  const visit = (node: ts.Node): void => {
    nodes.push(node);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile('cells.ts', code, ts.ScriptTarget.ESNext, true));
  return nodes;
}

/** What the cells take from anywhere but the public API (and files). */
export function foreignImports(notebook: Notebook): string[] {
  return nodesOf(notebook).flatMap((node) => {
    if (ts.isImportDeclaration(node) && ts.isStringLiteral(node.moduleSpecifier))
      return ALLOWED.has(node.moduleSpecifier.text) ? [] : [node.moduleSpecifier.text];
    if (node.kind === ts.SyntaxKind.ImportKeyword && !ts.isImportDeclaration(node.parent))
      return ['import()'];
    return ts.isIdentifier(node) && OUTSIDE.has(node.text) && !isMemberName(node) ? [node.text] : [];
  });
}

/** Signs that a cell works out something that the package should: functions of Math beyond the plain ones, powers. */
export function ownPhysics(notebook: Notebook): string[] {
  return nodesOf(notebook).flatMap((node) => {
    if (node.kind === ts.SyntaxKind.AsteriskAsteriskToken) return ['**'];
    if (!ts.isIdentifier(node) || node.text !== 'Math' || isMemberName(node)) return [];
    const { parent } = node;
    const plain = ts.isPropertyAccessExpression(parent) && PLAIN_MATHS.has(parent.name.text);
    return plain ? [] : [parent.getText()];
  });
}

const isMemberName = (node: ts.Identifier) =>
  (ts.isPropertyAccessExpression(node.parent) && node.parent.name === node) ||
  (ts.isPropertyAssignment(node.parent) && node.parent.name === node);

/** Replacements that would silently do nothing once a reader has changed the text; `replaced` says so. */
export function silentReplacements({ cells }: Notebook): string[] {
  return cells
    .flatMap(({ code }) => [...code.matchAll(/\.replace(?:All)?\(\s*'(?!-')[^']*'/gu)])
    .map(([found]) => found);
}

/** A number of prose, glued to its unit or not, behind a minus or a dash; not a part of a word such as AC-3 or IEC 60034-1. */
const NUMBER = /(?<![\w.]|[A-Za-z][-–])\d(?:[\d.]|\s(?=\d{3}(?!\d)))*(?!\w*-\w)/gu;
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
    .map(([number]) => number.replaceAll(/\s/gu, '').replace(/[.,]$/u, ''))
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
