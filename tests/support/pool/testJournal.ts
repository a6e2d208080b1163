import { fingerprint } from '../../../src/pool/fingerprint.ts';
import type { JournalHeader } from '../../../src/pool/journalHeader.ts';
import { type Shard, WHOLE } from '../../../src/pool/shard.ts';
import { runList } from '../../../src/survey/draws/runList.ts';
import type { Survey, SurveyRow } from '../../../src/survey/spec/survey.ts';
import { runner } from './testRunner.ts';

/** The header that a survey's journal has. */
export function headerOf(survey: Survey, shard: Shard = WHOLE): JournalHeader {
  const { count } = runList(survey);
  return { program: '9.9.9', fingerprint: fingerprint(survey), count, shard, survey };
}

/** Rows of some runs of a survey. */
export function rowsOf(survey: Survey, runs: readonly number[]): SurveyRow[] {
  const list = runList(survey);
  const make = runner(survey);
  return runs.map((run) => make(run, list.valuesOf(run)));
}
