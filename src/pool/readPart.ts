import { runList } from '../survey/draws/runList.ts';
import type { RunList } from '../survey/spec/survey.ts';
import { JournalError } from './journalError.ts';
import type { JournalHeader } from './journalHeader.ts';
import { scanJournal } from './journalScan.ts';
import type { MergePart } from './mergeParts.ts';

const EXPECTED =
  'a part as this program has written it (the command that made it, with --fresh, makes it anew)';

/**
 * Goes through the journal of one part and makes sure that its rows are those of the survey in its first line.
 *
 * @throws JournalError when it is empty or damaged, or with the line that is of another survey
 */
export function readPart(name: string): MergePart {
  let list: RunList | null = null;
  const scan = scanJournal(
    name,
    (header) => {
      list = listOf(name, header);
    },
    ({ run, values }, line) => {
      if (list !== null && !areEqual(values, list.valuesOf(run)))
        throw new JournalError(
          `${name}:${line}: run ${run} has values of another survey; expected ${EXPECTED}`,
        );
    },
  );
  if (scan === null) throw new JournalError(`${name}: nothing is in it; expected a journal of a survey`);
  return { name, ...scan };
}

/** The runs that a journal's survey has; null for a search, which has no list. */
function listOf(name: string, { survey, count }: JournalHeader): RunList | null {
  if (survey.task.kind === 'worst') return null;
  const list = runList(survey);
  if (list.count !== count)
    throw new JournalError(
      `${name}:1: it is of ${count} runs, and its survey has ${list.count}; expected ${EXPECTED}`,
    );
  return list;
}

/** Whether the values are the same, but for the sign of zero: the first line, which is JSON, does not keep it. */
function areEqual(a: readonly number[], b: readonly number[]): boolean {
  return a.length === b.length && a.every((value, index) => value === b[index]);
}
