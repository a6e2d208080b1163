import { closeSync, openSync } from 'node:fs';
import { rowOfLine } from '../recording/journalLine.ts';
import type { Survey, SurveyRow } from '../survey/spec/survey.ts';
import { BlockReader } from './blockReader.ts';
import { accessError, JournalError } from './journalError.ts';
import { shapeOf } from './journalHeader.ts';

/**
 * Rows of a journal in the order of their runs, a block of the file at a time.
 *
 * @param offsets where the line of each run begins, bytes; 0 where there is none
 */
export function* journalRows(name: string, offsets: Float64Array, survey: Survey): Generator<SurveyRow> {
  const shape = shapeOf(survey);
  let file: number;
  try {
    file = openSync(name, 'r');
  } catch (error) {
    throw accessError(name, error, 'the journal that was just written');
  }
  try {
    const reader = new BlockReader(file);
    for (const offset of offsets) {
      if (offset === 0) continue;
      const row = rowOfLine(reader.line(offset), shape);
      if (row === null)
        throw new JournalError(`${name}: it was changed while it was read; expected to be alone`);
      yield row;
    }
  } finally {
    closeSync(file);
  }
}
