import { type Document, isMap, isScalar, isSeq, type Node, parseDocument } from 'yaml';
import { maxCharacters } from '../limits.ts';

/** A text with the places of everything in it. */
export interface YamlText {
  readonly text: string;
  readonly contents: Node;
  /** The same as plain data. */
  readonly data: unknown;
  /** Every text and key is quoted, as the file is JSON. */
  readonly json: boolean;
}

/** Reads a text so that it can be changed in place; null where it is no YAML of which a scenario could come. */
export function readYamlText(text: string): YamlText | null {
  if (text.length > maxCharacters) return null;
  try {
    const document: Document.Parsed = parseDocument(text, {
      prettyErrors: false,
      uniqueKeys: false,
      stringKeys: true,
      version: '1.2',
    });
    const contents = document.contents;
    if (document.errors.length > 0 || document.warnings.length > 0 || !isMap(contents)) return null;
    // An anchor is refused by the parser of scenarios; here it only must not multiply.
    return {
      text,
      contents,
      data: document.toJS({ maxAliasCount: 0 }),
      json: contents.flow === true && isQuoted(contents),
    };
  } catch {
    return null;
  }
}

function isQuoted(contents: Node): boolean {
  if (!isMap(contents)) return false;
  const first = contents.items[0]?.key;
  return isScalar(first) && first.type === 'QUOTE_DOUBLE';
}

/** First character of a node. */
export function startOf(node: Node): number {
  return node.range?.[0] ?? 0;
}

/** Just behind the last character of a node, without comments and blank lines after it. */
export function endOf(node: Node): number {
  if (isMap(node) && node.flow !== true) {
    const last = node.items.at(-1);
    const inner = (last?.value ?? last?.key) as Node | null | undefined;
    if (inner) return endOf(inner);
  }
  if (isSeq(node) && node.flow !== true) {
    const inner = node.items.at(-1) as Node | undefined;
    if (inner) return endOf(inner);
  }
  return node.range?.[1] ?? 0;
}

/** First character of the line on which an offset lies. */
export function lineStart(text: string, offset: number): number {
  return text.lastIndexOf('\n', offset - 1) + 1;
}

/** First character of the next line after what ends at an offset; the length of the text on the last line. */
export function nextLine(text: string, end: number): number {
  // A text over several lines brings its last line break with it.
  if (end > 0 && text[end - 1] === '\n') return end;
  const found = text.indexOf('\n', end);
  return found < 0 ? text.length : found + 1;
}
