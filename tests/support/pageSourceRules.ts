import ts from 'typescript';
import type { SourceFile } from './sourceRules.ts';

const { SyntaxKind } = ts;

/** Operators that compute, whatever they are given. */
const COMPUTING: ReadonlySet<ts.SyntaxKind> = new Set([
  SyntaxKind.AsteriskToken,
  SyntaxKind.SlashToken,
  SyntaxKind.PercentToken,
  SyntaxKind.AsteriskAsteriskToken,
  SyntaxKind.MinusToken,
  SyntaxKind.AmpersandToken,
  SyntaxKind.BarToken,
  SyntaxKind.CaretToken,
  SyntaxKind.LessThanLessThanToken,
  SyntaxKind.GreaterThanGreaterThanToken,
  SyntaxKind.GreaterThanGreaterThanGreaterThanToken,
  SyntaxKind.AsteriskEqualsToken,
  SyntaxKind.SlashEqualsToken,
  SyntaxKind.PercentEqualsToken,
  SyntaxKind.AsteriskAsteriskEqualsToken,
  SyntaxKind.MinusEqualsToken,
  SyntaxKind.AmpersandEqualsToken,
  SyntaxKind.BarEqualsToken,
  SyntaxKind.CaretEqualsToken,
  SyntaxKind.LessThanLessThanEqualsToken,
  SyntaxKind.GreaterThanGreaterThanEqualsToken,
  SyntaxKind.GreaterThanGreaterThanGreaterThanEqualsToken,
]);
/** Operators that join texts or add numbers. */
const ADDING: ReadonlySet<ts.SyntaxKind> = new Set([SyntaxKind.PlusToken, SyntaxKind.PlusEqualsToken]);
/** Members that take markup as text, or run text as a program. */
const MARKUP_MEMBERS: readonly string[] = [
  'innerHTML',
  'outerHTML',
  'insertAdjacentHTML',
  'dangerouslySetInnerHTML',
  'srcdoc',
  'setHTMLUnsafe',
  'createContextualFragment',
  'cssText',
];

const parse = ({ path, text }: SourceFile) => ts.createSourceFile(path, text, ts.ScriptTarget.ES2023, true);

/** Calls `found` with every node of a file for which it is true that `breach` names something. */
function breaches(files: readonly SourceFile[], breach: (node: ts.Node) => boolean): string[] {
  return files.flatMap((file) => {
    const source = parse(file);
    const found: string[] = [];
    const visit = (node: ts.Node): void => {
      if (breach(node)) {
        const { line } = source.getLineAndCharacterOfPosition(node.getStart(source));
        found.push(`${file.path}:${line + 1}: ${node.getText(source)}`);
      }
      ts.forEachChild(node, visit);
    };
    visit(source);
    return found;
  });
}

/**
 * Everything that computes: operators, `Math`, the sign of anything but a literal, and `+` where no operand is seen to be
 * a text. `++` and `--` count and are let be.
 */
export function arithmetic(files: readonly SourceFile[]): string[] {
  return breaches(files, (node) => {
    if (ts.isBinaryExpression(node)) {
      const { kind } = node.operatorToken;
      if (ADDING.has(kind)) return !isText(node.left) && !isText(node.right);
      return COMPUTING.has(kind);
    }
    if (ts.isPrefixUnaryExpression(node))
      return (
        node.operator === SyntaxKind.TildeToken ||
        (node.operator === SyntaxKind.MinusToken && !ts.isNumericLiteral(node.operand))
      );
    return ts.isIdentifier(node) && node.text === 'Math' && !isMemberName(node);
  });
}

/** True where the source shows that an expression is a text. */
function isText(node: ts.Expression): boolean {
  if (ts.isParenthesizedExpression(node)) return isText(node.expression);
  if (ts.isBinaryExpression(node) && node.operatorToken.kind === SyntaxKind.PlusToken)
    return isText(node.left) || isText(node.right);
  return ts.isStringLiteralLike(node) || ts.isTemplateExpression(node);
}

function isMemberName(node: ts.Identifier): boolean {
  const { parent } = node;
  return ts.isPropertyAccessExpression(parent) && parent.name === node;
}

/** Everything that makes markup, a program or a style out of a text. */
export function unsafeText(files: readonly SourceFile[]): string[] {
  return breaches(files, (node) => {
    if (ts.isIdentifier(node) || ts.isStringLiteralLike(node)) {
      if (MARKUP_MEMBERS.includes(node.text)) return true;
    }
    if (ts.isCallExpression(node) || ts.isNewExpression(node)) {
      const name = node.expression.getText();
      if (/(?:^|\.)(?:eval|Function)$/u.test(name)) return true;
      if (/(?:^|\.)document\.write(?:ln)?$/u.test(name)) return true;
      const [first] = node.arguments ?? [];
      if (/(?:^|\.)set(?:Timeout|Interval)$/u.test(name) && first !== undefined && isText(first)) return true;
      if (/\.setAttribute(?:NS)?$/u.test(name))
        return (node.arguments ?? []).some(
          (given) => ts.isStringLiteralLike(given) && /^(?:style|on\w+)$/u.test(given.text),
        );
    }
    if (ts.isJsxAttribute(node) && node.name.getText() === 'style') {
      const value = node.initializer;
      if (value === undefined || ts.isStringLiteral(value)) return true;
      return ts.isJsxExpression(value) && value.expression !== undefined && isText(value.expression);
    }
    return (
      (ts.isJsxOpeningElement(node) || ts.isJsxSelfClosingElement(node)) &&
      ['script', 'style', 'iframe', 'object', 'embed'].includes(node.tagName.getText())
    );
  });
}

/** Addresses in style sheets that lead out of the page's own folder, and styles taken from other sheets. */
export function foreignAddresses(sheets: readonly SourceFile[]): string[] {
  return sheets.flatMap(({ path, text }) => {
    const plain = text.replaceAll(/\/\*.*?\*\//gsu, '');
    const addresses = [...plain.matchAll(/url\(\s*["']?(?<address>[^"')]*)/giu)]
      .map((match) => match.groups?.address ?? '')
      .filter((address) => !address.startsWith('./') && !address.startsWith('#'));
    const imports = plain.match(/@import[^;]*/giu) ?? [];
    return [...addresses, ...imports].map((found) => `${path}: ${found}`);
  });
}
