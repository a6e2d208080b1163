import { closeSync, openSync } from 'node:fs';
import { rowOfLine } from '../recording/journalLine.ts';
import type { SurveyRow } from '../survey/spec/survey.ts';
import { BlockReader } from './blockReader.ts';
import { fileLines } from './fileLines.ts';
import { accessError, BEGIN_ANEW, JournalError } from './journalError.ts';
import { headerOfLine, type JournalHeader, shapeOf } from './journalHeader.ts';
import { ordinalOf, runsOfShard } from './shard.ts';

/** What is in a journal. */
export interface JournalScan {
  readonly header: JournalHeader;
  /** Where the line of each run of the shard begins, bytes, by its number in the shard; 0 where there is none. */
  readonly offsets: Float64Array;
  /** Runs that are there. */
  readonly done: number;
  /** Bytes up to the end of the last whole line. */
  readonly end: number;
}

/**
 * Goes through a journal from its beginning and makes sure of every line. A last line without a line break, which a stopped process
 * leaves behind, counts for nothing.
 *
 * @param name of the file, also for messages
 * @param onHeader may refuse the journal before its rows are read
 * @param onRow is told every row, once
 * @returns null where not even the first line is whole
 * @throws JournalError with the line that is damaged, holds a run of another shard or contradicts an earlier line
 */
export function scanJournal(
  name: string,
  onHeader: (header: JournalHeader) => void = () => {},
  onRow: (row: SurveyRow, line: number) => void = () => {},
): JournalScan | null {
  const file = opened(name);
  try {
    return scanned(file, name, onHeader, onRow);
  } finally {
    closeSync(file);
  }
}

function opened(name: string): number {
  try {
    return openSync(name, 'r');
  } catch (error) {
    throw accessError(name, error, 'a journal of a survey');
  }
}

function scanned(
  file: number,
  name: string,
  onHeader: (header: JournalHeader) => void,
  onRow: (row: SurveyRow, line: number) => void,
): JournalScan | null {
  const lines = fileLines(file, name);
  const first = lines.next();
  if (first.done === true) return null;
  const header = headerOfLine(first.value.text);
  if (typeof header === 'string') throw new JournalError(`${name}:1: ${header}; expected one, ${BEGIN_ANEW}`);
  onHeader(header);
  const shape = shapeOf(header.survey);
  const offsets = new Float64Array(runsOfShard(header.shard, header.count));
  const earlier = new BlockReader(file);
  let { end } = first.value;
  let done = 0;
  let number = 1;
  for (const line of lines) {
    number += 1;
    end = line.end;
    const refuse = (what: string) =>
      new JournalError(
        `${name}:${number}: ${what}; expected what this program has written there, ${BEGIN_ANEW}`,
      );
    const row = rowOfLine(line.text, shape);
    if (row === null) throw refuse('this line is damaged');
    const ordinal = ordinalOf(header.shard, row.run);
    if (ordinal === null || ordinal >= offsets.length)
      throw refuse(`run ${row.run} is none of this journal's`);
    const before = offsets[ordinal]!;
    if (before > 0) {
      if (earlier.line(before) !== line.text)
        throw refuse(`run ${row.run} stands here a second time, and with other figures`);
      continue;
    }
    offsets[ordinal] = line.offset;
    done += 1;
    onRow(row, number);
  }
  return { header, offsets, done, end };
}
