import { Lexer, Parser } from 'yaml';
import { maxCharacters, maxDepth, maxTokens } from './limits.ts';
import type { PlacedFault } from './placedFault.ts';

/**
 * Looks at text before it is parsed: its length first, then its characters, then how deep it nests. The nesting comes
 * from the YAML library's own lexer and its stack, which do not recurse; the walk ends at the first level too many.
 *
 * @param source the text of a scenario
 * @returns the reason to refuse it, or null
 */
export function checkText(source: string): PlacedFault | null {
  if (source.length > maxCharacters) {
    return {
      code: 'tooLarge',
      message: `has ${source.length} characters`,
      expected: `a scenario of at most ${maxCharacters} characters`,
      place: { line: null, column: null },
    };
  }
  const bad = findControlCharacter(source);
  if (bad >= 0) {
    const code = source.charCodeAt(bad).toString(16).toUpperCase().padStart(4, '0');
    const message = `contains the character U+${code}`;
    return { code: 'notText', message, expected: 'text in UTF-8', place: placeOf(source, bad) };
  }
  return measureNesting(source);
}

function measureNesting(source: string): PlacedFault | null {
  const parser = new Parser();
  let tokens = 0;
  let offset = 0;
  for (const token of new Lexer().lex(source)) {
    tokens += 1;
    if (tokens > maxTokens) {
      const words = { message: `has more than ${maxTokens} pieces`, expected: 'a scenario of a page or two' };
      return { code: 'tooLarge', ...words, place: placeOf(source, offset) };
    }
    // The parser yields finished documents; only its stack is of interest here.
    for (const _ of parser.next(token)) void _;
    if (parser.stack.length > maxDepth) {
      const words = {
        message: `nests deeper than ${maxDepth} levels`,
        expected: 'a scenario: about five levels',
      };
      return { code: 'tooDeep', ...words, place: placeOf(source, offset) };
    }
    offset = parser.offset;
  }
  return null;
}

/** NUL and other control characters but tab and line ends, and what a decoder puts for bytes that are no UTF-8. */
function findControlCharacter(source: string): number {
  for (let i = 0; i < source.length; i++) {
    const code = source.charCodeAt(i);
    const control = code < 0x20 && code !== 0x09 && code !== 0x0a && code !== 0x0d;
    if (control || code === 0x7f || code >= 0xfffd) return i;
  }
  return -1;
}

function placeOf(source: string, offset: number): { line: number; column: number } {
  const before = source.slice(0, offset);
  const line = before.split('\n').length;
  return { line, column: offset - before.lastIndexOf('\n') };
}
