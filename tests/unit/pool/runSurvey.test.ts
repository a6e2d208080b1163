import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { mergeJournals } from '../../../src/pool/mergeJournals.ts';
import { runSurvey } from '../../../src/pool/runSurvey.ts';
import type { Survey } from '../../../src/survey/spec/survey.ts';
import { rowsOf } from '../../support/pool/testJournal.ts';
import { type RunOrders, TEST_RUNNER, testSurvey } from '../../support/pool/testSurvey.ts';
import { workFolder } from '../../support/workFolder.ts';

const COUNT = 13;
const survey = testSurvey(COUNT);
const runs = Array.from({ length: COUNT }, (_, run) => run);
const expected = rowsOf(survey, runs);
const runner = TEST_RUNNER;

const sortedLines = (name: string) => readFileSync(name, 'utf8').trimEnd().split('\n').slice(1).sort();

describe('the rows of a survey', () => {
  it('are the same with any number of workers, and in shards that are merged', async () => {
    const folder = workFolder();
    const at = (name: string) => path.join(folder, name);
    const alone = await runSurvey(survey, { workers: 1, journal: at('alone'), runner });
    expect(alone).toMatchObject({ complete: true, done: COUNT, total: COUNT, resumed: 0 });
    expect([...alone.rows()]).toStrictEqual(expected);
    const inMemory = await runSurvey(survey, { workers: 3, runner });
    expect([...inMemory.rows()]).toStrictEqual(expected);
    for (const index of [0, 1]) {
      const shard = { index, of: 2 };
      const { total } = await runSurvey(survey, { workers: 2, shard, journal: at(`part${index}`), runner });
      expect(total).toBe(index === 0 ? 7 : 6);
    }
    const merged = mergeJournals([at('part1'), at('part0')], at('merged'));
    expect([...merged.rows()]).toStrictEqual(expected);
    expect(sortedLines(at('merged'))).toEqual(sortedLines(at('alone')));
    // Finished: not one run is made again, not even by a runner that cannot.
    const again = await runSurvey(testSurvey(COUNT, { dies: runs }), { journal: at('merged'), runner });
    expect(again).toMatchObject({ complete: true, resumed: COUNT });
    expect([...again.rows()]).toStrictEqual(expected);
  });

  it('hold what a run throws and what kills its worker, and the others are as ever', async () => {
    const mark = path.join(workFolder(), 'mark');
    const lost: string[] = [];
    const orders = { throws: [3], endless: [5], foreign: [9], dies: [7], diesOnce: { run: 11, mark } };
    const { rows } = await runSurvey(testSurvey(COUNT, orders), {
      workers: 2,
      runner,
      onLost: (reason) => lost.push(reason),
    });
    const made = [...rows()];
    const bad = new Set([3, 5, 7, 9]);
    expect(made.filter(({ run }) => !bad.has(run))).toStrictEqual(
      expected.filter(({ run }) => !bad.has(run)),
    );
    const failed = { status: 'failed', metrics: [null, null], verdict: null };
    expect(made[3]).toEqual({
      run: 3,
      values: expected[3]!.values,
      ...failed,
      reason: 'run 3 has no answer',
    });
    expect(made[5]).toMatchObject({
      ...failed,
      reason: expect.stringMatching(
        /^what the runner returned is no row of this survey \(NaN in a row; .*\): /u,
      ),
    });
    expect(made[7]).toMatchObject({
      ...failed,
      reason: expect.stringMatching(/^its worker thread ended: .*7$/u),
    });
    expect(made[9]).toMatchObject({
      ...failed,
      reason: expect.stringMatching(/is no row of this survey: /u),
    });
    expect(existsSync(mark)).toBe(true);
    expect(lost.some((text) => text.startsWith('run 7: '))).toBe(true);
    expect(lost.some((text) => text.startsWith('run 11: '))).toBe(false);
  });

  it('hold what a runner returned that is no row, and what it threw that is no error', async () => {
    const lost: string[] = [];
    const eight = [0, 1, 2, 3, 4, 5, 6, 7];
    const reasonsOf = async (orders: RunOrders) => {
      const options = { workers: 1, runner, onLost: (reason: string) => lost.push(reason) };
      const made = [...(await runSurvey(testSurvey(9, orders), options)).rows()];
      expect(made[8]).toStrictEqual(rowsOf(testSurvey(9), [8])[0]);
      for (const { status } of made.slice(0, 8)) expect(status).toBe('failed');
      return made.slice(0, 8).map(({ reason }) => reason!);
    };
    const returned = await reasonsOf({ nonsense: eight });
    for (const reason of returned) {
      expect(reason).toMatch(/^what the runner returned is no row of this survey: /u);
      expect(reason).not.toMatch(/Cannot read|undefined \(reading|is not a function|nobody looks|later/u);
      expect(reason.length).toBeLessThan(400);
    }
    expect(returned[0]).toMatch(/: undefined$/u);
    expect(returned[1]).toMatch(/: \{\}$/u);
    expect(returned[4]).toMatch(/: a promise$/u);
    expect(returned[5]).toMatch(/values: \[ 0\.3 \]/u);
    const thrown = await reasonsOf({ thrown: eight });
    expect(thrown).toEqual([
      'the run threw what cannot be shown',
      '{ text: 3 }',
      '[Object: null prototype] {}',
      'undefined',
      'in words',
      'Symbol(sign)',
      'the run threw what cannot be shown',
      'of no class',
    ]);
    expect(lost).toEqual([]);
  });

  it('are made by ES modules in the workers', async () => {
    const module = new URL('../../support/pool/moduleRunner.ts', import.meta.url).href;
    const { rows } = await runSurvey(testSurvey(2), { workers: 1, runner: module });
    expect([...rows()].map(({ metrics }) => metrics[0])).toEqual([0, 0]);
  });
});

it('a survey that is ended early goes on where it was, and progress counts what is there', async () => {
  const journal = path.join(workFolder(), 'journal');
  const ending = new AbortController();
  const first: number[] = [];
  const cut = await runSurvey(testSurvey(COUNT, { slow: 15 }), {
    workers: 1,
    journal,
    runner,
    signal: ending.signal,
    onProgress: (done, total) => {
      expect(total).toBe(COUNT);
      first.push(done);
      if (done >= 3) ending.abort();
    },
  });
  expect(cut.complete).toBe(false);
  expect(first[0]).toBe(0);
  expect(first.at(-1)).toBe(cut.done);
  expect(cut.done).toBeLessThan(COUNT);
  expect([...cut.rows()]).toHaveLength(cut.done);
  expect(existsSync(`${journal}.lock`)).toBe(false);

  const second: number[] = [];
  const whole = await runSurvey(survey, {
    workers: 1,
    journal,
    runner,
    onProgress: (done) => second.push(done),
  });
  expect(whole).toMatchObject({ complete: true, resumed: cut.done, done: COUNT });
  expect(second[0]).toBe(cut.done);
  expect(second.at(-1)).toBe(COUNT);
  expect(second).toEqual(second.toSorted((a, b) => a - b));
  expect([...whole.rows()]).toStrictEqual(expected);
});

it('a survey whose folder is removed while it runs ends in an error at once', async () => {
  const folder = path.join(workFolder(), 'dl');
  const journal = path.join(folder, 'journal');
  let done = 0;
  const run = runSurvey(testSurvey(200, { slow: 5 }), {
    workers: 1,
    journal,
    runner,
    onProgress: (now) => {
      if (done < 3 && now >= 3) rmSync(folder, { recursive: true });
      done = now;
    },
  });
  await expect(run).rejects.toThrow(/it was removed, moved or replaced/u);
  expect(done).toBeLessThan(200);
  expect(existsSync(folder)).toBe(false);
});

it('a survey whose journal is removed and which is then ended early does not say that its rows are there', async () => {
  const journal = path.join(workFolder(), 'journal');
  const ending = new AbortController();
  const run = runSurvey(testSurvey(200, { slow: 5 }), {
    workers: 1,
    journal,
    runner,
    signal: ending.signal,
    onProgress: (now) => {
      if (now < 3) return;
      rmSync(journal, { force: true });
      ending.abort();
    },
  });
  await expect(run).rejects.toThrow(/it was removed, moved or replaced/u);
});

it('a signal that was given before keeps everything from starting', async () => {
  const ended = await runSurvey(survey, { runner, signal: AbortSignal.abort() });
  expect(ended).toMatchObject({ complete: false, done: 0 });
});

it('a search gives the same rows in one piece and from half a journal', async () => {
  const search: Survey = {
    ...survey,
    fields: [{ path: 'load.inertia', unit: 'kg m^2', spread: { kind: 'uniform', from: 0.1, to: 0.7 } }],
    task: { kind: 'worst', metric: 'plugMinimumTorque', seek: 'largest', runs: 30 },
  };
  const journal = path.join(workFolder(), 'journal');
  const one = await runSurvey(search, { workers: 1, runner });
  expect(one).toMatchObject({ complete: true, total: one.done });
  const rows = [...one.rows()];
  await runSurvey(search, { workers: 2, journal, runner });
  const lines = readFileSync(journal, 'utf8').split('\n');
  writeFileSync(journal, `${lines.slice(0, 1 + rows.length / 2).join('\n')}\n`);
  const resumed = await runSurvey(search, { workers: 1, journal, runner });
  expect(resumed.resumed).toBe(Math.floor(rows.length / 2));
  expect(resumed.done).toBe(rows.length);
  expect([...resumed.rows()]).toStrictEqual(rows);
});

describe('what cannot be made', () => {
  it('is refused before a file is made', async () => {
    const journal = path.join(workFolder(), 'journal');
    const broken = runSurvey(testSurvey(3, { broken: true }), { journal, runner });
    await expect(broken).rejects.toThrow('no such motor');
    expect(existsSync(journal)).toBe(false);
  });

  it('in worker threads ends in an error instead of rows that say so', async () => {
    const run = runSurvey(testSurvey(3, { brokenInThread: true }), { workers: 1, runner });
    await expect(run).rejects.toThrow('the worker threads cannot work: no such thread');
  });

  it.each([
    [{ workers: 0 }, /0 workers; expected a whole number from 1/u],
    [{ workers: 1.5 }, /1\.5 workers/u],
    [{ shard: { index: 2, of: 2 } }, /shard 2 of 2; expected whole numbers/u],
    [{ shard: { index: 0, of: 14 } }, /14 shards of 13 runs/u],
  ])('with %j is refused', async (options, message) => {
    await expect(runSurvey(survey, { ...options, runner })).rejects.toThrow(message);
  });

  it('in shards is a search', async () => {
    const task = { kind: 'worst', metric: 'plugMinimumTorque', seek: 'largest', runs: 30 } as const;
    const run = runSurvey({ ...survey, task }, { shard: { index: 0, of: 2 }, runner });
    await expect(run).rejects.toThrow(/what it runs next depends on all runs before/u);
  });
});
