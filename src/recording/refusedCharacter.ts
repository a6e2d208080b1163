import type { Fault } from '../scenario/problem.ts';

/** What a decoder puts for bytes that are not UTF-8. */
const REPLACEMENT = '\uFFFD';
/** Marks that reorder text on screen. */
const BIDI_CONTROL = /[\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069]/u;
/** Not a character, or one that steers a terminal; a cell may hold several lines and tabs. */
const UNPRINTABLE = /[^\P{Cc}\t\r\n]|[\p{Cs}\uFFFE\uFFFF]/u;

/**
 * The first character of a cell that no text may hold, as a fault; null where there is none.
 *
 * @param text of the cell
 */
export function refusedCharacter(text: string): Fault | null {
  for (const character of text) {
    if (character === REPLACEMENT)
      return {
        code: 'notText',
        message: 'holds U+FFFD, which stands for bytes that are not UTF-8',
        expected: 'text in UTF-8: save the table as UTF-8',
      };
    if (BIDI_CONTROL.test(character))
      return {
        code: 'notText',
        message: `holds ${nameOf(character)}, which reorders text on screen`,
        expected: 'text without marks of direction',
      };
    if (UNPRINTABLE.test(character))
      return {
        code: 'notText',
        message: `holds ${nameOf(character)}, which cannot be printed`,
        expected: 'characters that can be printed',
      };
  }
  return null;
}

function nameOf(character: string): string {
  return `U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`;
}
