import type { RunSearch, SurveyRow } from '../survey/spec/survey.ts';
import { BEGIN_ANEW, JournalError } from './journalError.ts';
import type { RowStore } from './rowStore.ts';
import { sameNumbers } from './sameNumbers.ts';
import type { SurveyMaking } from './surveyMaking.ts';

/**
 * Makes a search to its end, batch by batch; rows that are in the store already are not made again.
 *
 * @param most runs that the search may make
 * @throws JournalError when a row in the store is not one that this search asks for
 */
export async function makeSearch(
  search: RunSearch,
  store: RowStore,
  most: number,
  making: SurveyMaking,
): Promise<void> {
  const known = new Map<number, SurveyRow>();
  const note = (rows: Iterable<SurveyRow>) => {
    for (const row of rows) known.set(row.run, row);
  };
  note(store.rows());
  const rows: SurveyRow[] = [];
  for (;;) {
    const batch = search.next(rows);
    if (batch === null) break;
    const jobs = batch.map((values, index) => ({ run: rows.length + index, values }));
    if (rows.length + jobs.length > most) throw new RangeError(`the search asks for more than ${most} runs`);
    for (const { run, values } of jobs) {
      const row = known.get(run);
      if (row !== undefined && !sameNumbers(row.values, values)) throw foreign(run);
    }
    const missing = jobs.filter(({ run }) => !known.has(run));
    await making.make(missing.values(), missing.length, note);
    if (making.signal.aborted) return;
    for (const { run } of jobs) rows.push(known.get(run)!);
  }
  if (known.size > rows.length) throw foreign(Math.max(...known.keys()));
}

function foreign(run: number): JournalError {
  return new JournalError(
    `the journal has a run ${run} that this search does not ask for; expected its own rows, ${BEGIN_ANEW}`,
  );
}
