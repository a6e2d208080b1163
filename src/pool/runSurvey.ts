import { availableParallelism } from 'node:os';
import { runList } from '../survey/draws/runList.ts';
import type { RunList, Survey } from '../survey/spec/survey.ts';
import type { RowSource } from '../survey/spread/rowSource.ts';
import { worstSearch } from '../survey/worst/worstSearch.ts';
import { fingerprint } from './fingerprint.ts';
import { openJournal } from './journal.ts';
import { loadRunner, RUNNER_MODULE } from './loadRunner.ts';
import { memoryStore, type RowStore } from './rowStore.ts';
import { sameNumbers } from './sameNumbers.ts';
import { makeSearch } from './searchMaking.ts';
import { runsOfShard, type Shard, WHOLE } from './shard.ts';
import { missingRuns, surveyMaking } from './surveyMaking.ts';
import { VERSION } from './version.ts';

/** How a survey is made. Nothing here changes a row. */
export interface SurveyRunOptions {
  /** Threads; as many as the computer runs at once when left out. */
  readonly workers?: number;
  /** Part of the list that is made here; all of it when left out. A search cannot be parted. */
  readonly shard?: Shard;
  /** Path of the journal that rows go to, and are taken from where some are there; in memory when left out. */
  readonly journal?: string;
  /** Throws away what is in the journal. */
  readonly fresh?: boolean;
  /** Ends the making early; what is in work is dropped. */
  readonly signal?: AbortSignal;
  /**
   * Told at the beginning and after every chunk. `done`: number of runs that are there. `total`: number of runs of this
   * shard; for a search the most it may make. `speed`: null until enough runs were made to tell.
   */
  readonly onProgress?: (done: number, total: number, speed: SurveySpeed | null) => void;
  /** Told once, when enough runs were made to tell. */
  readonly onEstimate?: (estimate: SurveyEstimate) => void;
  /** Told when a worker thread has died of a run; `reason`: why, in words. */
  readonly onLost?: (reason: string) => void;
  /** URL of a module that exports another `runner(survey)`. */
  readonly runner?: string;
}

/** How fast runs are made. */
export interface SurveySpeed {
  /** Runs a second, of all threads over the last seconds. */
  readonly rate: number;
  /** What is still to come takes at this rate, s. */
  readonly seconds: number;
}

/** What is still to come, measured when the threads are up to speed. */
export interface SurveyEstimate {
  /** Number of runs that are still to come. */
  readonly runs: number;
  /** s */
  readonly seconds: number;
  /** Of the whole journal, bytes; 0 without one. */
  readonly bytes: number;
}

/** How the making of a survey ended. */
export interface SurveyOutcome {
  /** False: the signal ended it early. */
  readonly complete: boolean;
  /** Runs that are there. */
  readonly done: number;
  /** Runs of this shard; for a search that is over, those it has made. */
  readonly total: number;
  /** Number of runs, of `done`, that were in the journal before. */
  readonly resumed: number;
  /** In the order of the runs; each call begins anew. */
  readonly rows: RowSource;
}

/**
 * Makes the runs of a survey in worker threads. Same survey, same rows, whatever the number of workers, the shards, and how
 * often it was stopped and gone on with.
 *
 * @throws ScenarioError when the survey's scenario cannot be used
 * @throws JournalError when the journal cannot be used or written
 * @throws WorkerError when the threads cannot make runs at all
 * @throws RangeError when an option is none, and as `runList` and `worstSearch` do
 * @throws TypeError as `runList` does
 */
export async function runSurvey(survey: Survey, options: SurveyRunOptions = {}): Promise<SurveyOutcome> {
  const { shard = WHOLE, workers = availableParallelism(), runner = RUNNER_MODULE } = options;
  assertOptions(survey, workers, shard);
  // Here first: what is wrong with the survey is told before a thread or a file is made.
  await loadRunner(runner, survey);
  const { task } = survey;
  const list = task.kind === 'worst' ? null : runList(survey);
  const count = list === null ? mostRuns(survey) : list.count;
  if (shard.of > count)
    throw new RangeError(`${shard.of} shards of ${count} runs; expected no more shards than runs`);
  const total = runsOfShard(shard, count);
  const store = openStore(survey, options, shard, count, list);
  const resumed = store.done;
  const making = surveyMaking({ survey, runner }, store, workers, total, options);
  try {
    if (list === null) await makeSearch(worstSearch(survey), store, total, making);
    else await making.make(missingRuns(list, shard, store), total - store.done);
    const complete = !making.signal.aborted || store.done === total;
    return {
      complete,
      done: store.done,
      total: list === null && complete ? store.done : total,
      resumed,
      rows: store.rows,
    };
  } finally {
    await making.end();
    store.close();
  }
}

function assertOptions({ task }: Survey, workers: number, { index, of }: Shard): void {
  if (!Number.isSafeInteger(workers) || workers < 1)
    throw new RangeError(`${workers} workers; expected a whole number from 1`);
  if (!Number.isSafeInteger(of) || !Number.isSafeInteger(index) || index < 0 || index >= of)
    throw new RangeError(
      `shard ${index} of ${of}; expected whole numbers, the index from 0 and below their number`,
    );
  if (task.kind === 'worst' && of > 1)
    throw new RangeError('a search cannot be made in shards: what it runs next depends on all runs before');
}

function mostRuns({ task }: Survey): number {
  return task.kind === 'worst' ? task.runs : 0;
}

function openStore(
  survey: Survey,
  { journal, fresh = false }: SurveyRunOptions,
  shard: Shard,
  count: number,
  list: RunList | null,
): RowStore {
  if (journal === undefined) return memoryStore(shard, count);
  const header = { program: VERSION, fingerprint: fingerprint(survey), count, shard, survey };
  return openJournal(journal, header, {
    fresh,
    faultOf: ({ run, values }) =>
      list === null || sameNumbers(values, list.valuesOf(run))
        ? null
        : `run ${run} has values of another survey`,
  });
}
