import ts from 'typescript';
import { ENGINE_FUNCTIONS } from './nudgedMath.ts';
import type { SourceFile } from './sourceRules.ts';

/** Rooms that a number of a run, a fit or a judgement comes from. */
const COMPUTING_ROOMS: readonly string[] = [
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
];
/** The one file that reaches for the engine's functions, to put others in their place. */
const EXCHANGES_THEM = 'simulate/withOwnPowers.ts';

/**
 * Uses of what the language leaves to the engine to the last bit: the elementary functions of `Math`, powers, and `Math` itself
 * handed on, where nobody sees which function is taken from it. What may differ by a last bit and not more (drawings, texts,
 * the page) is in other rooms.
 */
export function engineDependence(files: readonly SourceFile[]): string[] {
  return files
    .filter(({ path }) => COMPUTING_ROOMS.includes(path.split('/')[0]!) && path !== EXCHANGES_THEM)
    .flatMap(({ path, text }) => {
      const source = ts.createSourceFile(path, text, ts.ScriptTarget.ES2023, true);
      const found: string[] = [];
      const visit = (node: ts.Node): void => {
        if (dependsOnEngine(node)) {
          const { line } = source.getLineAndCharacterOfPosition(node.getStart(source));
          found.push(`${path}:${line + 1}: ${node.parent.getText(source)}`);
        }
        ts.forEachChild(node, visit);
      };
      visit(source);
      return found;
    });
}

function dependsOnEngine(node: ts.Node): boolean {
  if (
    node.kind === ts.SyntaxKind.AsteriskAsteriskToken ||
    node.kind === ts.SyntaxKind.AsteriskAsteriskEqualsToken
  )
    return true;
  if (!ts.isIdentifier(node) || node.text !== 'Math') return false;
  const { parent } = node;
  if (!ts.isPropertyAccessExpression(parent)) return true;
  if (parent.name === node) return false;
  return (ENGINE_FUNCTIONS as readonly string[]).includes(parent.name.text);
}
