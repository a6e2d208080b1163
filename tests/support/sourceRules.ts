import ts from 'typescript';

/** A source file with its path below src/, such as `machine/circuit.ts`. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
}

/** Rooms in the order of the one-way rule: a room imports itself and rooms before it. */
export const ROOMS = [
  'numeric',
  'scenario',
  'machine',
  'shaft',
  'estimate',
  'starter',
  'simulate',
  'measure',
  'assess',
  'survey',
  'recording',
  'report',
  'pool',
  'cli',
  'page',
] as const;

/** Rooms that touch files, the terminal or the document; all others run anywhere. */
const EDGE_ROOMS: readonly string[] = ['pool', 'cli', 'page'];
/** Files that are no code, such as the examples that the page offers: an edge may take them from anywhere in the project. */
const IS_DATA = /\.(?:yaml\?raw|json)$/u;
/** Globals that make a result depend on where and when it is computed. */
const IMPURE_GLOBALS: readonly string[] = [
  'process',
  'console',
  'Date',
  'window',
  'document',
  'globalThis',
  'performance',
];
/** The one file that may import the solver. */
const ADAPTER = 'simulate/odexAdapter.ts';

const parse = ({ path, text }: SourceFile) => ts.createSourceFile(path, text, ts.ScriptTarget.ES2023, true);
const roomOf = (path: string) => (path.includes('/') ? path.slice(0, path.indexOf('/')) : '');

/** Module specifiers of every import, export-from and dynamic import. */
function importsOf(source: ts.SourceFile): string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    const specifier =
      ts.isImportDeclaration(node) || ts.isExportDeclaration(node)
        ? node.moduleSpecifier
        : ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword
          ? node.arguments[0]
          : ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)
            ? node.argument.literal
            : undefined;
    if (specifier !== undefined && ts.isStringLiteral(specifier)) found.push(specifier.text);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** Path below src/ of a relative import. */
function resolved(from: string, specifier: string): string {
  const parts = from.split('/').slice(0, -1);
  for (const part of specifier.split('/')) {
    if (part === '..') parts.pop();
    else if (part !== '.') parts.push(part);
  }
  return parts.join('/');
}

/** Imports that go up the order of the rooms, to a room that does not exist, or past the adapter. */
export function importBreaches(files: readonly SourceFile[]): string[] {
  return files.flatMap((file) => {
    const order = ROOMS.indexOf(roomOf(file.path) as (typeof ROOMS)[number]);
    const isIndex = file.path === 'index.ts';
    return importsOf(parse(file)).flatMap((specifier) => {
      if ((specifier === '#odex' || specifier === 'odex') && file.path !== ADAPTER)
        return [`${file.path} imports the solver; only ${ADAPTER} may`];
      if (!specifier.startsWith('.')) return [];
      if (EDGE_ROOMS.includes(roomOf(file.path)) && IS_DATA.test(specifier)) return [];
      const room = roomOf(resolved(file.path, specifier));
      const target = ROOMS.indexOf(room as (typeof ROOMS)[number]);
      if (isIndex)
        return target >= 0 && !EDGE_ROOMS.includes(room) ? [] : [`index.ts exports from ${specifier}`];
      if (resolved(file.path, specifier) === 'index.ts' && EDGE_ROOMS.includes(roomOf(file.path))) return [];
      if (target < 0 || order < 0) return [`${file.path} imports ${specifier}: no such room`];
      return target <= order
        ? []
        : [`${file.path} imports ${specifier}: ${room} comes after ${roomOf(file.path)}`];
    });
  });
}

/** Rooms without an edge that reach for files, terminal, document, clock or chance. */
export function impurities(files: readonly SourceFile[]): string[] {
  return files
    .filter(({ path }) => !EDGE_ROOMS.includes(roomOf(path)))
    .flatMap((file) => {
      const source = parse(file);
      const local = declaredNames(source);
      const found = importsOf(source)
        .filter((specifier) => specifier.startsWith('node:'))
        .map((specifier) => `${file.path} imports ${specifier}`);
      const visit = (node: ts.Node): void => {
        if (
          ts.isIdentifier(node) &&
          IMPURE_GLOBALS.includes(node.text) &&
          !local.has(node.text) &&
          isGlobalUse(node)
        )
          found.push(`${file.path} uses ${node.text}`);
        if (ts.isPropertyAccessExpression(node) && node.getText(source) === 'Math.random')
          found.push(`${file.path} uses Math.random`);
        ts.forEachChild(node, visit);
      };
      visit(source);
      return found;
    });
}

/** Names that the file itself gives to variables and parameters. */
function declaredNames(source: ts.SourceFile): ReadonlySet<string> {
  const names = new Set<string>();
  const visit = (node: ts.Node): void => {
    if (
      (ts.isVariableDeclaration(node) || ts.isParameter(node) || ts.isBindingElement(node)) &&
      ts.isIdentifier(node.name)
    )
      names.add(node.name.text);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return names;
}

/** False for names of properties, members and parameters that happen to be spelt like a global. */
function isGlobalUse(node: ts.Identifier): boolean {
  const { parent } = node;
  if (ts.isPropertyAccessExpression(parent)) return parent.expression === node;
  if (ts.isPropertyAssignment(parent) || ts.isPropertySignature(parent)) return parent.name !== node;
  return true;
}

/** Exported functions, types, constants and classes without a doc comment. */
export function undocumentedExports(files: readonly SourceFile[]): string[] {
  return files.flatMap((file) =>
    parse(file)
      .statements.filter(
        (statement) => isExported(statement) && ts.getJSDocCommentsAndTags(statement).length === 0,
      )
      .map((statement) => `${file.path}: ${nameOf(statement)} has no doc comment`),
  );
}

function isExported(statement: ts.Statement): boolean {
  return (
    ts.canHaveModifiers(statement) &&
    (ts.getModifiers(statement)?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword) ?? false)
  );
}

function nameOf(statement: ts.Statement): string {
  if (ts.isVariableStatement(statement))
    return statement.declarationList.declarations.map((declaration) => declaration.name.getText()).join(', ');
  const { name } = statement as ts.Statement & { readonly name?: ts.Identifier };
  return name?.text ?? 'default export';
}
