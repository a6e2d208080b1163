import { spawn } from 'node:child_process';
import { readFileSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { expect, it } from 'vitest';
import { JOURNAL_NAME } from '../../../src/pool/journal.ts';
import { runSurvey } from '../../../src/pool/runSurvey.ts';
import { rowsOf } from '../../support/pool/testJournal.ts';
import { TEST_RUNNER, testSurvey } from '../../support/pool/testSurvey.ts';
import { workFolder } from '../../support/workFolder.ts';

const SCRIPT = fileURLToPath(new URL('../../support/pool/killedSurvey.ts', import.meta.url));
const TSX = pathToFileURL(createRequire(import.meta.url).resolve('tsx')).href;
const COUNT = 400;
/** ms a run: a process makes a few at a time and is never done before it is killed. */
const SLOW = 20;

const sizeOf = (file: string) => statSync(file, { throwIfNoEntry: false })?.size ?? 0;

/** Starts the survey and kills it without warning some ms after it has written more. */
async function kill(journal: string, after: number): Promise<void> {
  const before = sizeOf(journal);
  const child = spawn(process.execPath, ['--import', TSX, SCRIPT, journal, String(COUNT), String(SLOW)], {
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  const ended = new Promise((resolve) => child.on('exit', (_, signal) => resolve(signal)));
  // The first line is a new journal's header.
  while (sizeOf(journal) <= before || (before === 0 && !readFileSync(journal, 'utf8').includes('\n[')))
    await wait(5);
  await wait(after);
  child.kill('SIGKILL');
  expect(await ended).toBe('SIGKILL');
}

it('a survey that was killed at any instant, several times, loses nothing that was written and counts nothing twice', async () => {
  const journal = path.join(workFolder(), JOURNAL_NAME);
  let done = 0;
  for (const after of [0, 37, 91]) {
    await kill(journal, after);
    const lines = readFileSync(journal, 'utf8').split('\n').length - 2;
    expect(lines).toBeGreaterThan(done);
    done = lines;
  }
  const whole = await runSurvey(testSurvey(COUNT), { workers: 2, journal, runner: TEST_RUNNER });
  expect(whole).toMatchObject({ complete: true, resumed: done, done: COUNT });
  const runs = Array.from({ length: COUNT }, (_, run) => run);
  expect([...whole.rows()]).toStrictEqual(rowsOf(testSurvey(COUNT), runs));
  const lines = readFileSync(journal, 'utf8').trimEnd().split('\n').slice(1);
  expect(new Set(lines).size).toBe(COUNT);
  expect(lines).toHaveLength(COUNT);
});
