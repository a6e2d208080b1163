/**
 * The public API of surveys in worker threads, for Node: a survey in, its rows out, with a journal to go on from.
 *
 * @module countertorque/pool
 */

export { JOURNAL_NAME } from './journal.ts';
export { JournalError } from './journalError.ts';
export { type MergedSurvey, mergeJournals } from './mergeJournals.ts';
export {
  runSurvey,
  type SurveyEstimate,
  type SurveyOutcome,
  type SurveyRunOptions,
  type SurveySpeed,
} from './runSurvey.ts';
export type { Shard } from './shard.ts';
export { WorkerError } from './workerError.ts';
