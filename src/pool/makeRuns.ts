import type { SurveyRow } from '../survey/spec/survey.ts';
import type { Pace } from './pace.ts';
import type { RunJob } from './runJob.ts';
import type { Workers } from './workers.ts';

/** Chunks for each thread that are on their way at once: one in work and one waiting, so that none is idle. */
const CHUNKS_A_THREAD = 2;

/** What is to be made, and by whom. */
export interface RunMaking {
  readonly jobs: Iterator<RunJob>;
  /** How many there are. */
  readonly count: number;
  readonly workers: Workers;
  readonly threads: number;
  readonly pace: Pace;
  /** Ends the making; what is finished was given to `take`. */
  readonly signal: AbortSignal;
  /** Takes the rows of a chunk, in no particular order of chunks. */
  readonly take: (rows: readonly SurveyRow[]) => void;
}

/**
 * Makes runs in chunks, a bounded number of which is on its way at any time.
 *
 * @throws Error what `take` or the workers throw; then nothing more is handed out
 */
export async function makeRuns(making: RunMaking): Promise<void> {
  const { jobs, workers, threads, pace, signal, take } = making;
  let left = making.count;
  let failed = false;
  const nextChunk = () => {
    const chunk: RunJob[] = [];
    for (let size = pace.chunk(left); chunk.length < size; ) {
      const job = jobs.next();
      if (job.done === true) break;
      chunk.push(job.value);
    }
    left -= chunk.length;
    return chunk;
  };
  const lane = async () => {
    while (!failed && !signal.aborted) {
      const chunk = nextChunk();
      if (chunk.length === 0) return;
      const { rows, elapsed } = await workers.make(chunk);
      if (failed || signal.aborted) return;
      pace.add(rows.length, elapsed);
      take(rows);
    }
  };
  const guarded = () =>
    lane().catch((error: unknown) => {
      failed = true;
      if (!signal.aborted) throw error;
    });
  await Promise.all(Array.from({ length: CHUNKS_A_THREAD * threads }, guarded));
}
