import { existsSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { runCommand } from '../support/commandLine.ts';
import { filesBelow, folderWithExamples, workFolder } from '../support/workFolder.ts';

it('no arguments run the built-in example and end with four numbers, the report and three commands', async () => {
  const folder = workFolder();
  const { exit, out, err } = await runCommand(folder, []);
  expect(exit).toBe(0);
  expect(err).toBe('');
  const lines = out.trimEnd().split('\n');
  const tail = lines.slice(lines.findIndex((line) => line.startsWith('Peak current')));
  expect(tail.map((line) => line.split(/ {2,}/u)[0])).toEqual([
    'Peak current',
    'Worst torque',
    'Time to zero',
    'Rotor heat',
    '',
    `Report: ${path.join('reports', 'may-this-belt-be-plugged', 'report.html')}`,
    '',
    'Next:',
    '',
    '',
    '',
  ]);
  expect(tail.slice(-3).every((line) => line.startsWith('  npm start -- '))).toBe(true);
  expect(existsSync(path.join(folder, 'reports', 'may-this-belt-be-plugged', 'report.html'))).toBe(true);
});

it('each of the three commands it proposes works as typed', { timeout: 60_000 }, async () => {
  const folder = folderWithExamples();
  const { out } = await runCommand(folder, []);
  const proposed = [...out.matchAll(/^ {2}npm start -- (.+)$/gmu)].map(([, args]) => args!.split(' '));
  expect(proposed).toHaveLength(3);
  for (const args of proposed) expect((await runCommand(folder, args)).exit, args.join(' ')).toBe(0);
});

it('the report folder holds the page, the trace, the summary and the figures', async () => {
  const folder = workFolder();
  await runCommand(folder, []);
  expect(filesBelow(folder)).toEqual([
    'reports/may-this-belt-be-plugged/figures/energy.svg',
    'reports/may-this-belt-be-plugged/figures/switching-1-start.svg',
    'reports/may-this-belt-be-plugged/figures/switching-2-plug.svg',
    'reports/may-this-belt-be-plugged/figures/time.svg',
    'reports/may-this-belt-be-plugged/figures/torque-speed.svg',
    'reports/may-this-belt-be-plugged/report.html',
    'reports/may-this-belt-be-plugged/summary.json',
    'reports/may-this-belt-be-plugged/trace.csv',
  ]);
});
