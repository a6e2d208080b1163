/**
 * Many plug stops: runs per second of one thread against plain odex in the same process, what more threads bring, how long the command line
 * takes to say its first word, and how much memory a survey takes when it grows. The same seed gives the same runs.
 *
 *     npm run bench -- 2000
 */
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import os from 'node:os';
import { fileURLToPath } from 'node:url';
import { runSurvey } from '../../src/pool/runSurvey.ts';
import { runTrajectory } from '../../src/simulate/run.ts';
import { runList } from '../../src/survey/draws/runList.ts';
import { runner } from '../../src/survey/runs/runner.ts';
import { scenarioReader } from '../../src/survey/runs/scenarioReader.ts';
import { readSurvey } from '../../src/survey/spec/readSurvey.ts';
import type { Survey } from '../../src/survey/spec/survey.ts';
import { plainIntegration } from './plainOdex.ts';

const RUNS = Number(process.argv[2] ?? 2000);
/** Runs of one thread that are timed one by one, after as many for warm-up. */
const TIMED = 300;
/** Starts of the command line. */
const STARTS = 7;
const here = (name: string) => new URL(name, import.meta.url);

function surveyOf(runs: number): Survey {
  const text = readFileSync(here('surveyPlugStop.yaml'), 'utf8').replace(/^runs: .*$/mu, `runs: ${runs}`);
  const survey = readSurvey(text, {
    fileName: 'surveyPlugStop.yaml',
    scenarioText: (name) => readFileSync(here(name), 'utf8'),
  });
  const tolerance = '\nsolver: { relativeTolerance: 1e-6 }\n';
  return { ...survey, base: { ...survey.base, text: survey.base.text + tolerance } };
}

const median = (times: number[]) => times.sort((a, b) => a - b)[times.length >> 1]!;

function timed(job: (k: number) => void, count: number): number {
  const times: number[] = [];
  for (let k = 0; k < 2 * count; k++) {
    const start = performance.now();
    job(k);
    if (k >= count) times.push(performance.now() - start);
  }
  return median(times);
}

/** Time to the first output and until the end of a command, ms. */
function startUp(args: readonly string[]): Promise<{ first: number; end: number }> {
  return new Promise((resolve, reject) => {
    const start = performance.now();
    const child = spawn(process.execPath, [fileURLToPath(here('../../src/cli/start.js')), ...args]);
    let first = Number.NaN;
    const seen = () => {
      if (Number.isNaN(first)) first = performance.now() - start;
    };
    child.stdout.on('data', seen);
    child.stderr.on('data', seen);
    child.on('error', reject);
    child.on('close', () => resolve({ first, end: performance.now() - start }));
  });
}

/** Largest resident memory of a process that makes a survey in memory with one worker thread, MB. */
function peakMemory(runs: number): Promise<number> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [
      '--import',
      'tsx',
      fileURLToPath(here('surveyMemory.ts')),
      String(runs),
    ]);
    let text = '';
    child.stdout.on('data', (part) => {
      text += part;
    });
    child.stderr.pipe(process.stderr);
    child.on('error', reject);
    child.on('close', () => resolve(Number(text)));
  });
}

console.log(
  `Node ${process.version}, ${os.availableParallelism()} × ${os.cpus()[0]?.model ?? 'unknown processor'}\n`,
);

const survey = surveyOf(RUNS);
const list = runList(survey);
const make = runner(survey);
const read = scenarioReader(survey);
const known = runTrajectory({
  ...read(list.valuesOf(0)).scenario,
  solver: { relativeTolerance: 1e-9, endTime: 'auto', maxSteps: 1e6, frame: 'stationary' },
});
// In turns of one pass each, so that a disturbance hits both.
const row = timed((k) => make(k % RUNS, list.valuesOf(k % RUNS)), TIMED);
const plain = timed(() => plainIntegration(known, 1e-5, false), TIMED / 3);
const reading = timed((k) => read(list.valuesOf(k % RUNS)), TIMED);
console.log(
  `One thread: ${row.toFixed(2)} ms a run with its figures, ${Math.round(1000 / row)} runs a second;`,
);
console.log(
  `  plain odex in the stationary frame, equal error (tolerance 1e-5), no figures: ${plain.toFixed(2)} ms, ratio ${(row / plain).toFixed(2)};`,
);
console.log(`  of it making the scenario ${reading.toFixed(2)} ms\n`);

let alone = Number.NaN;
for (let workers = 1; workers <= os.availableParallelism(); workers *= 2) {
  const start = performance.now();
  const { done } = await runSurvey(survey, { workers });
  const seconds = (performance.now() - start) / 1000;
  if (workers === 1) alone = seconds;
  console.log(
    `${done} runs, ${workers} worker${workers > 1 ? 's' : ''}: ${seconds.toFixed(1)} s, ${Math.round(done / seconds)} runs a second, ${(alone / seconds).toFixed(2)} times as fast as one`,
  );
}

const starts: { first: number; end: number }[] = [];
for (let k = 0; k < STARTS; k++) starts.push(await startUp(['--version']));
const help: { first: number; end: number }[] = [];
for (let k = 0; k < STARTS; k++) help.push(await startUp(['survey', '--help']));
console.log(
  `\nCommand line, new process: first output of --version after ${median(starts.map(({ first }) => first)).toFixed(0)} ms, of survey --help after ${median(help.map(({ first }) => first)).toFixed(0)} ms`,
);

for (const runs of [RUNS / 4, RUNS])
  console.log(`Peak memory, ${runs} runs: ${(await peakMemory(runs)).toFixed(0)} MB`);
