import path from 'node:path';
import { JOURNAL_NAME } from '../pool/journal.ts';
import { runSurvey, type SurveyEstimate, type SurveyOutcome } from '../pool/runSurvey.ts';
import { type Shard, WHOLE } from '../pool/shard.ts';
import { WorkerError } from '../pool/workerError.ts';
import { shellWord } from '../report/shellWord.ts';
import type { Survey } from '../survey/spec/survey.ts';
import { sizeWords, timeWords } from '../survey/spec/surveyCost.ts';
import { type CliIo, EXIT, type ExitCode } from './io.ts';
import { oneRun } from './oneRun.ts';
import { type ProgressBar, progressBar } from './progressBar.ts';
import { readShard } from './readShard.ts';
import { readSurveyFile } from './readSurveyFile.ts';
import { surveyFiles } from './surveyFiles.ts';
import { VERSION } from './version.ts';
import { wholeNumber } from './wholeNumber.ts';
import { valueAsWritten, worstCertificate } from './worstCertificate.ts';
import { reportFolder, writeFiles } from './writeFiles.ts';

/** Options of the command as the command line gives them. */
export interface SurveyCommandOptions {
  readonly out?: string;
  readonly workers?: string;
  /** `i/n` */
  readonly shard?: string;
  readonly run?: string;
  readonly fresh?: boolean;
  readonly units: 'si' | 'us';
}

/** Threads above which a number is taken for a slip. */
const MOST_WORKERS = 1024;
/** A survey of more runs, or of more seconds, is told what it will take. */
const LARGE = { runs: 20_000, seconds: 60 } as const;
/** Name of the file with the scenario of the extreme. */
const WORST = 'worst.yaml';

/** Makes the runs of a survey, or goes on with them, and writes tables and report. */
export async function surveyCommand(
  file: string,
  options: SurveyCommandOptions,
  io: CliIo,
): Promise<ExitCode> {
  const survey = readSurveyFile(file, io);
  const shard = options.shard === undefined ? WHOLE : readShard(options.shard, survey);
  const folder =
    options.out ?? `${reportFolder(file)}${shard.of > 1 ? `-${shard.index + 1}-of-${shard.of}` : ''}`;
  const journal = path.resolve(io.cwd, folder, JOURNAL_NAME);
  if (options.run !== undefined) {
    io.out(oneRun(survey, options.run, journal));
    return EXIT.done;
  }
  const outcome = await made(survey, { ...options, shard, journal }, io);
  if (outcome === null) return EXIT.runFailed;
  if (!outcome.complete) {
    io.err(
      `interrupted: ${outcome.done} of ${outcome.total} runs are in ${path.join(folder, JOURNAL_NAME)}; the same command${options.fresh === true ? ' without --fresh' : ''} goes on with them\n`,
    );
    return EXIT.interrupted;
  }
  const report = {
    units: options.units === 'us' ? ('us' as const) : ('SI' as const),
    version: VERSION,
    shard: shard.of > 1 ? { index: shard.index + 1, of: shard.of } : null,
    surveyFile: file,
    ...(options.out === undefined ? {} : { folder: options.out }),
    ...(survey.task.kind === 'worst' ? { worst: { asWritten: valueAsWritten(survey) } } : {}),
  };
  surveyFiles(survey, outcome.rows, report, folder, io);
  return survey.task.kind === 'worst' ? certified(survey, outcome, folder, io) : EXIT.done;
}

interface Making extends Pick<SurveyCommandOptions, 'workers' | 'fresh'> {
  readonly shard: Shard;
  readonly journal: string;
}

/** Null when the threads cannot work at all, which is told. */
async function made(survey: Survey, options: Making, io: CliIo): Promise<SurveyOutcome | null> {
  const { shard, journal, fresh = false, workers } = options;
  const bar = progressBar(io.progress, io.err);
  const ending = new AbortController();
  const unlisten = io.onInterrupt?.(() => ending.abort());
  try {
    return await runSurvey(survey, {
      ...(workers === undefined ? {} : { workers: wholeNumber('--workers', workers, 1, MOST_WORKERS) }),
      shard,
      journal,
      fresh,
      signal: ending.signal,
      onProgress: bar.update,
      onEstimate: (estimate) => tell(estimate, bar),
      onLost: bar.say,
    });
  } catch (error) {
    if (!(error instanceof WorkerError)) throw error;
    bar.say(error.message);
    return null;
  } finally {
    bar.stop();
    unlisten?.();
  }
}

function tell({ runs, seconds, bytes }: SurveyEstimate, bar: ProgressBar): void {
  if (runs <= LARGE.runs && seconds <= LARGE.seconds) return;
  bar.say(`${runs} runs to go: about ${timeWords(seconds)}, ${sizeWords(bytes)} of journal`);
}

/** Writes the scenario of the extreme, after running it once more by itself. */
function certified(survey: Survey, { rows }: SurveyOutcome, folder: string, io: CliIo): ExitCode {
  const found = worstCertificate(survey, rows);
  if (found === null) {
    io.err('no run of the search can be used: there is no extreme; the reasons are above\n');
    return EXIT.runFailed;
  }
  writeFiles(folder, [{ name: WORST, content: found.text }], io);
  const file = path.join(folder, WORST);
  io.out(`Extreme: run ${found.row.run}, by itself: npm start -- ${shellWord(file)}\n`);
  if (found.differing.length === 0) return EXIT.done;
  io.err(
    `${file}: run by itself it does not give what it gave in the survey (${found.differing.join(', ')}); the extreme is not to be trusted\n`,
  );
  return EXIT.runFailed;
}
