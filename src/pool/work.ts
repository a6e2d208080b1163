import { workerData } from 'node:worker_threads';
import { lineOfRow, rowOfLine } from '../recording/journalLine.ts';
import type { Runner } from '../survey/runs/runner.ts';
import type { SurveyRow } from '../survey/spec/survey.ts';
import { shapeOf } from './journalHeader.ts';
import { loadRunner } from './loadRunner.ts';
import { type ChunkResult, failedRow, type RunJob, type WorkerSetup } from './runJob.ts';

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
    return error instanceof Error ? error.message : String(error);
  }
  const start = performance.now();
  const rows = jobs.map((job) => rowOf(make, job));
  return { rows, elapsed: performance.now() - start };
}

function rowOf(make: Runner, job: RunJob): SurveyRow {
  try {
    const row = make(job.run, job.values);
    // A row that could not be read back must not get into a journal.
    if (rowOfLine(lineOfRow(row), shape) === null || row.run !== job.run)
      throw new RangeError(`the row is none of this survey: ${JSON.stringify(row)}`);
    return row;
  } catch (error) {
    return failedRow(job, shape.metrics, error instanceof Error ? error.message : String(error));
  }
}
