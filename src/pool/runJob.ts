import type { Survey, SurveyRow } from '../survey/spec/survey.ts';

/** One run to be made. */
export interface RunJob {
  /** Its number in the survey. */
  readonly run: number;
  readonly values: readonly number[];
}

/** What every worker is given when it starts. */
export interface WorkerSetup {
  readonly survey: Survey;
  /** URL of the module that makes runs. */
  readonly runner: string;
}

/** What a worker gives back for a chunk of jobs; in words why it can make none at all. */
export type ChunkResult = MadeChunk | string;

/** A finished chunk of jobs. */
export interface MadeChunk {
  /** In the order of the jobs. */
  readonly rows: readonly SurveyRow[];
  /** ms that the runs took. */
  readonly elapsed: number;
}

/** The row of a run that gave none. */
export function failedRow({ run, values }: RunJob, metrics: number, reason: string): SurveyRow {
  return { run, values, status: 'failed', reason, metrics: Array(metrics).fill(null), verdict: null };
}
