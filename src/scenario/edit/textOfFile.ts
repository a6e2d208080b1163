import { checkText } from '../checkText.ts';
import { maxCharacters } from '../limits.ts';
import type { Problem } from '../problem.ts';

/** Bytes that a character of UTF-8 takes at most. */
const BYTES_OF_A_CHARACTER = 4;

/** A file of more bytes need not be read to be refused. */
export const MOST_BYTES = BYTES_OF_A_CHARACTER * maxCharacters;

/** The text of a file, with what was done to it (null: nothing), or why it is none. */
export type TextOfFile =
  | { readonly text: string; readonly note: string | null }
  | { readonly problems: readonly [Problem] };

/** A line end as very old systems wrote it, which YAML readers of today take for nothing. */
const LONE_RETURN = /\r(?!\n)/gu;

const RETURNS_NOTE = 'The line ends of this file (CR) were changed to those of today (LF).';

/** What is said of a file that is too large to be a scenario. */
export function tooLarge(file: string, bytes: number): { readonly problems: readonly [Problem] } {
  const expected = `a scenario of at most ${maxCharacters} characters`;
  return refused(file, {
    code: 'tooLarge',
    message: `has ${bytes} bytes`,
    expected,
    line: null,
    column: null,
  });
}

/**
 * Reads the bytes of a file that somebody has chosen. Whether its text is a scenario is for the parser to say.
 *
 * @param file its name, for the messages
 */
export function textOfFile(file: string, bytes: Uint8Array): TextOfFile {
  if (bytes.length > MOST_BYTES) return tooLarge(file, bytes.length);
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    const message = 'is not text: it contains bytes that are none in UTF-8';
    return refused(file, {
      code: 'notText',
      message,
      expected: 'a scenario in UTF-8',
      line: null,
      column: null,
    });
  }
  const lines = text.replace(LONE_RETURN, '\n');
  const found = checkText(lines);
  if (found === null) return { text: lines, note: lines === text ? null : RETURNS_NOTE };
  const { place, ...fault } = found;
  return refused(file, { ...fault, ...place });
}

function refused(
  file: string,
  problem: Omit<Problem, 'file' | 'path' | 'found'>,
): { readonly problems: readonly [Problem] } {
  return { problems: [{ ...problem, file, path: '', found: null }] };
}
