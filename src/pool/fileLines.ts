import { readSync } from 'node:fs';
import { JournalError } from './journalError.ts';

/** Bytes read at once. */
const BLOCK = 262_144;
/** A header holds a scenario's text, of at most 1 MB, whose characters may take six each; no line of a journal is longer, bytes. */
const LONGEST_LINE = 8_000_000;
const LINE_FEED = 0x0a;

/** A line of a file that ends with a line break. */
export interface FileLine {
  /** Without the line break. */
  readonly text: string;
  /** Where it begins, bytes. */
  readonly offset: number;
  /** Where the next one begins, bytes. */
  readonly end: number;
}

/**
 * All lines of an open file from its beginning; what follows the last line break is no line yet and left out.
 *
 * @param file descriptor
 * @param name for the message
 * @throws JournalError where a line is longer than any of a journal
 */
export function* fileLines(file: number, name: string): Generator<FileLine> {
  let rest: Buffer = Buffer.alloc(0);
  let offset = 0;
  for (let position = 0; ; ) {
    const block = Buffer.allocUnsafe(BLOCK);
    const read = readSync(file, block, 0, BLOCK, position);
    if (read === 0) return;
    position += read;
    const joined = Buffer.concat([rest, block.subarray(0, read)]);
    let from = 0;
    for (let end = joined.indexOf(LINE_FEED); end >= 0; end = joined.indexOf(LINE_FEED, from)) {
      const next = offset + (end + 1 - from);
      yield { text: joined.toString('utf8', from, end), offset, end: next };
      offset = next;
      from = end + 1;
    }
    rest = joined.subarray(from);
    if (rest.length > LONGEST_LINE)
      throw new JournalError(`${name}: it is no journal of a survey; expected one`);
  }
}
