import { expect, it } from 'vitest';
import type { WearFile } from '../../src/report/wearFile.ts';
import { runCommand } from '../support/commandLine.ts';
import { shortRun } from '../support/shortRun.ts';
import { filesBelow, workFolder, writeInto } from '../support/workFolder.ts';

/** The contacts of the example were changed on 2026-01-10: what is before it does not count. */
const LOG = [
  'time,operation',
  '2026-01-02T08:00:00,start',
  '2026-01-12T08:00:00,start',
  '2026-01-12T09:00:00,plug stop',
  '2026-01-20T08:00:00,start',
  '2026-01-20T09:00:00,plug stop',
  '2026-02-10T08:00:00,start',
  '2026-02-10T09:00:00,plug stop',
].join('\n');

it('counts the operations since the change of contacts, up to the day that is asked for', async () => {
  const folder = workFolder();
  const file = writeInto(folder, 'belt.yaml', shortRun());
  const log = writeInto(folder, 'log.csv', LOG);
  const whole = await runCommand(folder, ['wear', file, log, '--json']);
  const early = await runCommand(folder, ['wear', file, log, '--json', '--as-of', '2026-01-31']);
  expect([whole.exit, early.exit, whole.err]).toEqual([0, 0, '']);
  const [all, some]: WearFile[] = [JSON.parse(whole.out), JSON.parse(early.out)];
  expect(all?.counts).toEqual({ start: 3, stop: 0, plugStop: 3, reversal: 0, inch: 0 });
  expect(some?.counts).toEqual({ start: 2, stop: 0, plugStop: 2, reversal: 0, inch: 0 });
  expect([all?.asOf, some?.asOf]).toEqual(['2026-02-10', '2026-01-31']);
  // Three equal operations wear half as much again as two.
  const used = (data: WearFile | undefined) => data?.contactors.reverse.used?.value ?? Number.NaN;
  expect(used(all) / used(some)).toBeCloseTo(1.5, 12);
  expect(some?.remarks.join(' ')).toContain('2 operations after that day left out');
  expect(some?.remarks.join(' ')).toContain('the log ends 11 days before that day');
  expect(filesBelow(folder)).toEqual(['belt.yaml', 'log.csv']);
}, 30_000);

it('tells every line of a log that is wrong, and what is wrong in the scenario, at once', async () => {
  const folder = workFolder();
  const file = writeInto(folder, 'belt.yaml', shortRun(['frequency: 50 Hz', 'frequency: 50']));
  const log = writeInto(folder, 'log.csv', 'time,operation\n2026-02-30,start\n2026-03-01,plugstop\n');
  const { exit, out, err } = await runCommand(folder, ['wear', file, log]);
  expect({ exit, out }).toEqual({ exit: 1, out: '' });
  expect(err).toMatch(
    /^belt\.yaml:\d+:\d+ supply\.frequency: .*\nlog\.csv:2:1 time: .*2026-02-30.*\nlog\.csv:3:12 operation: .*plug stop/u,
  );
});

it('refuses a scenario without contactors and a day that does not exist', async () => {
  const folder = workFolder();
  const text = shortRun();
  const cut = text.slice(0, text.indexOf('\ncontactors:')) + text.slice(text.indexOf('\nlimits:'));
  const file = writeInto(folder, 'belt.yaml', cut);
  const log = writeInto(folder, 'log.csv', LOG);
  const missing = await runCommand(folder, ['wear', file, log]);
  expect(missing.exit).toBe(1);
  expect(missing.err).toMatch(/^belt\.yaml: contactors is missing; expected/u);
  const day = await runCommand(folder, ['wear', file, log, '--as-of', '2026-02-30']);
  expect(day.exit).toBe(1);
  expect(day.err).toMatch(/^--as-of 2026-02-30: no date of the calendar; expected/u);
});

it('ends with 2 where no run ends well, so that the wear of an operation is not known', async () => {
  const folder = workFolder();
  const file = writeInto(folder, 'belt.yaml', `${shortRun()}solver: { maxSteps: 100 }\n`);
  const { exit, out, err } = await runCommand(folder, ['wear', file, writeInto(folder, 'log.csv', LOG)]);
  expect({ exit, out }).toEqual({ exit: 2, out: '' });
  expect(err).toMatch(/^belt\.yaml: the wear of an operation is not known\. .*None of these runs ends well/u);
}, 30_000);
