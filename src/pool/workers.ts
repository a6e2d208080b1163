import { Piscina } from 'piscina';
import { type ChunkResult, failedRow, type MadeChunk, type RunJob, type WorkerSetup } from './runJob.ts';
import { WorkerError } from './workerError.ts';

/** Threads that make runs. */
export interface Workers {
  /**
   * Makes the runs of a chunk. Where the thread dies of them, each is tried once more by itself, and one that kills its thread again
   * is recorded as failed.
   *
   * @throws Error when threads cannot start, or were stopped
   */
  readonly make: (jobs: readonly RunJob[]) => Promise<MadeChunk>;
  /** Drops what is in work and ends the threads. */
  readonly stop: () => Promise<void>;
}

/**
 * Starts threads.
 *
 * @param onLost told in words when a thread has died of its work
 * @throws Error when they cannot start
 */
export async function startWorkers(
  setup: WorkerSetup,
  threads: number,
  onLost: (reason: string) => void,
): Promise<Workers> {
  const pool = new Piscina({
    filename: new URL('./startWork.js', import.meta.url).href,
    name: 'work',
    minThreads: threads,
    maxThreads: threads,
    // Not those of this process: what they load is found from its folder, not from this one.
    execArgv: [],
    workerData: setup,
  });
  // A thread that fails while it has nothing to do: it could not be loaded, and no other would fare better.
  const broken = new Promise<never>((_, reject) => {
    pool.on('error', (error) => reject(new WorkerError(wordsOf(error))));
  });
  broken.catch(() => {});
  const run = async (jobs: readonly RunJob[]): Promise<MadeChunk> => {
    const made: ChunkResult = await Promise.race([pool.run(jobs) as Promise<ChunkResult>, broken]);
    if (typeof made === 'string') throw new WorkerError(made);
    return made;
  };
  let stopped = false;
  const stop = async () => {
    stopped = true;
    await pool.destroy();
  };
  const isFatal = (error: unknown) => stopped || error instanceof WorkerError;

  const makeAlone = async (job: RunJob): Promise<MadeChunk> => {
    try {
      return await run([job]);
    } catch (error) {
      if (isFatal(error)) throw error;
      const reason = `its worker thread ended: ${wordsOf(error)}`;
      onLost(`run ${job.run}: ${reason}`);
      return { rows: [failedRow(job, setup.survey.metrics.length, reason)], elapsed: 0 };
    }
  };
  const make = async (jobs: readonly RunJob[]): Promise<MadeChunk> => {
    try {
      return await run(jobs);
    } catch (error) {
      if (isFatal(error)) throw error;
      const [first, last] = [jobs[0]!.run, jobs.at(-1)!.run];
      onLost(
        `a worker thread ended within runs ${first} to ${last}, which are tried again: ${wordsOf(error)}`,
      );
      const parts: MadeChunk[] = [];
      for (const job of jobs) parts.push(await makeAlone(job));
      return {
        rows: parts.flatMap(({ rows }) => rows),
        elapsed: parts.reduce((sum, { elapsed }) => sum + elapsed, 0),
      };
    }
  };
  try {
    // Nothing to make: shows whether threads come up at all, before their failure could be taken for that of a run.
    await run([]);
  } catch (error) {
    await stop();
    throw error instanceof WorkerError ? error : new WorkerError(wordsOf(error));
  }
  return { make, stop };
}

function wordsOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
