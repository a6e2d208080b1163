import { workerData } from 'node:worker_threads';
import { lineOfRow, rowOfLine } from '../recording/journalLine.ts';
import type { Runner } from '../survey/runs/runner.ts';
import type { SurveyRow } from '../survey/spec/survey.ts';
import { shapeOf } from './journalHeader.ts';
import { loadRunner } from './loadRunner.ts';
import { type ChunkResult, failedRow, type RunJob, type WorkerSetup } from './runJob.ts';
import { sameNumbers } from './sameNumbers.ts';
import { shownValue, thrownWords } from './thrownWords.ts';

const { survey, runner } = workerData as WorkerSetup;
const shape = shapeOf(survey);
let loaded: Promise<Runner> | undefined;

/** Makes a chunk of runs in a worker thread. What a run throws is its row's reason; it never stops the others. */
export async function work(jobs: readonly RunJob[]): Promise<ChunkResult> {
  loaded ??= loadRunner(runner, survey);
  let make: Runner;
  try {
    make = await loaded;
  } catch (error) {
    return thrownWords(error);
  }
  const start = performance.now();
  const rows = jobs.map((job) => rowOf(make, job));
  return { rows, elapsed: performance.now() - start };
}

function rowOf(make: Runner, job: RunJob): SurveyRow {
  let returned: unknown;
  try {
    returned = make(job.run, job.values);
  } catch (error) {
    return failedRow(job, shape.metrics, thrownWords(error));
  }
  const row = readBack(returned, job);
  return typeof row === 'string' ? failedRow(job, shape.metrics, row) : row;
}

/** The row as it will be read from a journal, for one that could not be must not get into it; in words why it is none. */
function readBack(returned: unknown, job: RunJob): SurveyRow | string {
  let why = '';
  try {
    const row = rowOfLine(lineOfRow(returned as SurveyRow), shape);
    if (row !== null && row.run === job.run && sameNumbers(row.values, job.values)) return row;
  } catch (error) {
    // A number that is not finite; else only how reading nonsense failed, which says nothing.
    if (error instanceof RangeError) why = ` (${error.message})`;
  }
  return `what the runner returned is no row of this survey${why}: ${shownValue(returned) ?? 'it cannot be shown'}`;
}
