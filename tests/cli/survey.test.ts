import { spawn } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { expect, it } from 'vitest';
import { type Interruptible, onInterrupt } from '../../src/cli/onInterrupt.ts';
import { PROJECT, runCommand } from '../support/commandLine.ts';
import { shortRun } from '../support/shortRun.ts';
import { filesBelow, workFolder, writeInto } from '../support/workFolder.ts';

const SURVEY = `
title: What the instant of closing does
scenario: belt.yaml
ask: random
runs: 9
metrics: [plugPeakCurrent, stopTimeFromTouch]
vary:
  - { field: supply.angle, distribution: uniform, from: 0 deg, to: 360 deg }
`;

const SEARCH = SURVEY.replace('ask: random', 'ask: worst case\nmetric: plugPeakCurrent\nseek: largest')
  .replace('runs: 9', 'runs: 12')
  .replace('distribution: uniform, ', '');

/** A folder with a scenario and surveys of it. */
function folderWithSurveys(): string {
  const folder = workFolder();
  writeInto(folder, 'belt.yaml', shortRun());
  writeInto(folder, 'instants.yaml', SURVEY);
  writeInto(folder, 'worst.yaml', SEARCH);
  return folder;
}

it('a survey in one piece and in shards that are merged gives the same tables, to the byte', async () => {
  const folder = folderWithSurveys();
  const read = (name: string) => readFileSync(path.join(folder, name));
  const whole = await runCommand(folder, ['survey', 'instants.yaml', '--workers', '1']);
  expect(whole).toMatchObject({ exit: 0, err: '' });
  expect(whole.out).toContain(path.join('reports', 'instants', 'survey.html'));
  const names = ['runs.journal', 'survey.csv', 'survey.html', 'survey.parquet'];
  expect(filesBelow(path.join(folder, 'reports'))).toEqual(names.map((name) => `instants/${name}`));
  for (const shard of ['1/2', '2/2']) {
    const part = await runCommand(folder, ['survey', 'instants.yaml', '--shard', shard, '--workers', '1']);
    expect(part).toMatchObject({ exit: 0, err: '' });
  }
  const parts = ['reports/instants-1-of-2', 'reports/instants-2-of-2/runs.journal'];
  expect(await runCommand(folder, ['merge', ...parts, '--out', 'whole'])).toMatchObject({ exit: 0, err: '' });
  expect(filesBelow(path.join(folder, 'whole'))).toEqual(names);
  // The joined report lacks the name of the survey's file in its commands: the tables alone are the same.
  for (const name of ['survey.csv', 'survey.parquet'])
    expect(read(`whole/${name}`).equals(read(`reports/instants/${name}`)), name).toBe(true);
  const lacking = await runCommand(folder, ['merge', parts[0]!, '--out', 'none']);
  expect(lacking).toMatchObject({
    exit: 1,
    out: '',
    err: expect.stringMatching(/^shard 2\/2 .* is missing/u),
  });

  writeInto(folder, 'instants.yaml', SURVEY.replace('runs: 9', 'runs: 8'));
  const other = await runCommand(folder, ['survey', 'instants.yaml']);
  expect(other).toMatchObject({ exit: 1, out: '' });
  expect(other.err).toMatch(
    /runs\.journal: it is of another survey: the question or its number of runs changed; expected .*--fresh/u,
  );
  expect(await runCommand(folder, ['survey', 'instants.yaml', '--fresh', '--workers', '1'])).toMatchObject({
    exit: 0,
  });
});

it('a search leaves the scenario of its extreme, which gives that extreme by itself', async () => {
  const folder = folderWithSurveys();
  const { exit, out, err } = await runCommand(folder, ['survey', 'worst.yaml', '--workers', '1']);
  expect({ exit, err }).toEqual({ exit: 0, err: '' });
  const file = path.join('reports', 'worst', 'worst.yaml');
  const [, run] = /Extreme: run (\d+), by itself: npm start -- (?:.*)worst\.yaml\n/u.exec(out)!;
  const alone = await runCommand(folder, [file, '--json']);
  const table = readFileSync(path.join(folder, 'reports', 'worst', 'survey.csv'), 'utf8');
  const peak = JSON.parse(alone.out).metrics.plugPeakCurrent.value;
  expect(table.split('\n').find((line) => line.startsWith(`${run},`))).toContain(String(peak));
  const printed = await runCommand(folder, ['survey', 'worst.yaml', '--run', run!]);
  expect(printed).toEqual({ exit: 0, err: '', out: readFileSync(path.join(folder, file), 'utf8') });
});

it('--run prints the scenario of one run and does nothing else', async () => {
  const folder = folderWithSurveys();
  const before = filesBelow(folder);
  const { exit, out } = await runCommand(folder, ['survey', 'instants.yaml', '--run', '3']);
  expect(exit).toBe(0);
  const changed = (line: string, index: number) => line !== shortRun().split('\n')[index];
  expect(out.split('\n').filter(changed)).toEqual([expect.stringMatching(/^ *angle: [\d.]+ deg/u)]);
  expect(filesBelow(folder)).toEqual(before);
});

it.each([
  [['instants.yaml', '--shard', '3/2'], /^--shard 3\/2: no such part; expected i\/n/u],
  [['instants.yaml', '--shard', '0/2'], /no such part/u],
  [['instants.yaml', '--shard', '1/10'], /^--shard 1\/10: .* 9 runs/u],
  [['instants.yaml', '--workers', '0'], /^--workers 0: expected a whole number from 1/u],
  [['instants.yaml', '--run', '9'], /^--run 9: expected a whole number from 0 to 8/u],
  [['worst.yaml', '--shard', '1/2'], /a search for the worst case cannot be parted/u],
  [
    ['worst.yaml', '--run', '0'],
    /runs\.journal: there is no such file, .*expected its folder \(--out DIR\)/u,
  ],
  [
    ['belt.yaml'],
    /^belt\.yaml: it is a scenario, one run; expected a survey; this one runs with: npm start -- belt\.yaml,/u,
  ],
  [['none.yaml'], /^none\.yaml: there is no such file/u],
])('survey %j is refused before anything runs', async (args, message) => {
  const folder = folderWithSurveys();
  const before = filesBelow(folder);
  const { exit, out, err } = await runCommand(folder, ['survey', ...args]);
  expect({ exit, out }).toEqual({ exit: 1, out: '' });
  expect(err).toMatch(message);
  expect(filesBelow(folder)).toEqual(before);
});

it('Ctrl-C ends a survey with exit code 5, and the same command goes on', async () => {
  const folder = folderWithSurveys();
  writeInto(folder, 'instants.yaml', SURVEY.replace('runs: 9', 'runs: 100000'));
  const start = path.join(PROJECT, 'src', 'cli', 'start.js');
  const child = spawn(process.execPath, [start, 'survey', 'instants.yaml', '--workers', '1'], {
    cwd: folder,
  });
  let err = '';
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    err += text;
  });
  const ended = new Promise((resolve) => child.on('close', resolve));
  const journal = path.join(folder, 'reports', 'instants', 'runs.journal');
  const isBegun = () => {
    try {
      return readFileSync(journal, 'utf8').includes('\n[');
    } catch {
      return false;
    }
  };
  while (!isBegun()) await wait(20);
  // npm passes the terminal's signal on: two at once are one.
  child.kill('SIGINT');
  child.kill('SIGINT');
  expect(await ended).toBe(5);
  const [, done] = /interrupted: (\d+) of 100000 runs are in .*; the same command goes on with them\n/u.exec(
    err,
  )!;
  const lines = readFileSync(journal, 'utf8').split('\n');
  expect(lines).toHaveLength(Number(done) + 2);
  expect(filesBelow(folder)).not.toContain('reports/instants/runs.journal.lock');
  // No terminal: where it stood at the end is told once.
  expect(err.match(/^\d+ of 100000 runs/gmu)?.at(-1)).toBe(`${done} of 100000 runs`);
});

it('a second Ctrl-C quits at once, but not the one that npm adds to the first', async () => {
  const listeners = new Set<() => void>();
  const exits: unknown[] = [];
  const process = {
    on: (_: string, listener: () => void) => listeners.add(listener),
    off: (_: string, listener: () => void) => listeners.delete(listener),
    exit: (code: unknown) => exits.push(code),
  } as unknown as Interruptible;
  let heard = 0;
  const unlisten = onInterrupt(process, () => {
    heard += 1;
  });
  const press = () => {
    for (const listener of listeners) listener();
  };
  press();
  press();
  expect({ heard, exits }).toEqual({ heard: 1, exits: [] });
  await wait(550);
  press();
  expect({ heard, exits }).toEqual({ heard: 1, exits: [5] });
  unlisten();
  expect(listeners.size).toBe(0);
});

it('a journal that was tampered with is refused with its line', async () => {
  const folder = folderWithSurveys();
  await runCommand(folder, ['survey', 'instants.yaml', '--workers', '1']);
  const journal = path.join(folder, 'reports', 'instants', 'runs.journal');
  writeFileSync(journal, readFileSync(journal, 'utf8').replace('"good"', '"fine"'));
  const { exit, err } = await runCommand(folder, ['survey', 'instants.yaml']);
  expect(exit).toBe(1);
  expect(err).toMatch(/runs\.journal:2: this line is damaged; expected .*--fresh .*--out DIR/u);
});
