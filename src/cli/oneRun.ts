import { existsSync } from 'node:fs';
import { fingerprint } from '../pool/fingerprint.ts';
import { journalRows } from '../pool/journalRows.ts';
import { scanJournal } from '../pool/journalScan.ts';
import { runList } from '../survey/draws/runList.ts';
import { scenarioOfRun } from '../survey/runs/scenarioOfRun.ts';
import type { Survey } from '../survey/spec/survey.ts';
import { InputError } from './inputError.ts';
import { wholeNumber } from './wholeNumber.ts';

/**
 * The scenario text of one run of a survey: from its list or, for a search, from its journal.
 *
 * @param journal path of the journal
 * @throws InputError when there is no such run; JournalError when the journal is damaged
 */
export function oneRun(survey: Survey, text: string, journal: string): string {
  if (survey.task.kind !== 'worst') {
    const list = runList(survey);
    return scenarioOfRun(survey, list.valuesOf(wholeNumber('--run', text, 0, list.count - 1)));
  }
  if (!existsSync(journal))
    throw new InputError(
      `${journal}: there is no such file, and only a search that was made knows its runs; expected its folder (--out DIR)`,
    );
  const scan = scanJournal(journal);
  if (scan === null || scan.header.fingerprint !== fingerprint(survey))
    throw new InputError(`${journal}: it is of another survey; expected the journal of this one (--out DIR)`);
  const run = wholeNumber('--run', text, 0, survey.task.runs - 1);
  const offset = scan.offsets[run]!;
  if (offset === 0)
    throw new InputError(`--run ${text}: the search has not made it; ${scan.done} runs are there`);
  const [row] = journalRows(journal, Float64Array.of(offset), survey);
  return scenarioOfRun(survey, row!.values);
}
