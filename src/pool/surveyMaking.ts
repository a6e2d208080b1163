import type { RunList, SurveyRow } from '../survey/spec/survey.ts';
import { makeRuns } from './makeRuns.ts';
import { Pace } from './pace.ts';
import { Rate } from './rate.ts';
import type { RowStore } from './rowStore.ts';
import type { RunJob, WorkerSetup } from './runJob.ts';
import type { SurveyRunOptions } from './runSurvey.ts';
import { runAt, type Shard } from './shard.ts';
import { startWorkers, type Workers } from './workers.ts';

/** Makes runs of one survey and puts their rows into its store. */
export interface SurveyMaking {
  readonly signal: AbortSignal;
  /**
   * Makes runs that are not in the store; ends early where the signal says so.
   *
   * @param count how many jobs there are
   * @param onRows is told the rows of every chunk
   */
  readonly make: (
    jobs: Iterator<RunJob>,
    count: number,
    onRows?: (rows: readonly SurveyRow[]) => void,
  ) => Promise<void>;
  /** Ends the threads. */
  readonly end: () => Promise<void>;
}

/**
 * Prepares to make runs; threads start with the first of them.
 *
 * @param total runs in the store when all are made
 */
export function surveyMaking(
  setup: WorkerSetup,
  store: RowStore,
  most: number,
  total: number,
  options: SurveyRunOptions,
): SurveyMaking {
  const { signal = new AbortController().signal, onProgress, onEstimate, onLost = () => {} } = options;
  const threads = Math.max(1, Math.min(most, total - store.done));
  const pace = new Pace(threads);
  const resumed = store.done;
  let isEstimated = false;
  let workers: Workers | null = null;
  let rate: Rate | null = null;
  let began = 0;
  const drop = () => {
    // What the threads then say is no news; an error of theirs is told where their work is waited for.
    workers?.stop().catch(() => {});
  };
  signal.addEventListener('abort', drop);
  onProgress?.(store.done, total, null);

  const tell = () => {
    const runs = total - store.done;
    const perSecond = rate?.perSecond ?? null;
    const speed = perSecond === null ? null : { rate: perSecond, seconds: runs / perSecond };
    onProgress?.(store.done, total, speed);
    if (isEstimated || speed === null) return;
    isEstimated = true;
    onEstimate?.({
      runs,
      seconds: speed.seconds,
      bytes: (store.bytesAdded / (store.done - resumed)) * total,
    });
  };
  return {
    signal,
    make: async (jobs, count, onRows = () => {}) => {
      if (count === 0 || signal.aborted) return;
      workers ??= await startWorkers(setup, threads, onLost);
      if (rate === null) {
        rate = new Rate(threads);
        began = processorTime();
      }
      const take = (rows: readonly SurveyRow[]) => {
        store.add(rows);
        rate?.add(rows.length, performance.now(), processorTime() - began);
        onRows(rows);
        tell();
      };
      await makeRuns({ jobs, count, workers, threads, pace, signal, take });
    },
    end: async () => {
      signal.removeEventListener('abort', drop);
      await workers?.stop();
    },
  };
}

/** Of all threads of this process, ms. */
function processorTime(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** Runs of a shard that are not in the store, in their order. */
export function* missingRuns(list: RunList, shard: Shard, store: RowStore): Generator<RunJob, void> {
  for (let ordinal = 0, run = runAt(shard, 0); run < list.count; ordinal += 1, run = runAt(shard, ordinal))
    if (!store.has(ordinal)) yield { run, values: list.valuesOf(run) };
}
