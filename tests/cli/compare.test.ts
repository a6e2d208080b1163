import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import type { CompareFile } from '../../src/report/compareFile.ts';
import { displayWidth } from '../../src/report/displayWidth.ts';
import { runCommand } from '../support/commandLine.ts';
import { shortRun } from '../support/shortRun.ts';
import { filesBelow, workFolder, writeInto } from '../support/workFolder.ts';

it('lists exactly the keys that differ, both verdicts, and writes one page', async () => {
  const folder = workFolder();
  const a = writeInto(folder, 'a.yaml', shortRun());
  // Worded otherwise but the same: 400 V. Really different: the delay, and what the contacts must last.
  const b = writeInto(
    folder,
    'b.yaml',
    shortRun(
      ['lineVoltage: 400 V', 'lineVoltage: 0.4 kV'],
      ['changeoverDelay: 12 ms', 'changeoverDelay: 90 ms'],
      ['contactLife: 100000', 'contactLife: 9e8'],
    ),
  );
  const { exit, out } = await runCommand(folder, ['compare', a, b]);
  expect(exit).toBe(0);
  expect(out.split('\n').filter((line) => displayWidth(line) > 80)).toEqual([]);
  const lines = out.split('\n');
  const from = lines.findIndex((line) => line.startsWith('Input that differs'));
  const listed = lines.slice(from + 1, lines.indexOf('', from));
  expect(listed.map((line) => line.split(/ +/u).join(' '))).toEqual([
    'starter.changeoverDelay 12 ms 90 ms',
    'limits.contactLife 100000 900000000',
  ]);
  expect(out).toMatch(/^Life of the contacts .* close to limit .* FAIL$/mu);
  const page = readFileSync(path.join(folder, 'reports', 'a-and-b', 'compare.html'), 'utf8');
  expect(page).toContain('starter.changeoverDelay');
  expect(filesBelow(folder)).toEqual(['a.yaml', 'b.yaml', 'reports/a-and-b/compare.html']);
}, 30_000);

it('ends with 2 where a run does not come to an end, and says which; the other one is judged', async () => {
  const folder = workFolder();
  const steps = 'solver: { maxSteps: 100 }\n';
  const a = writeInto(folder, 'a.yaml', `${shortRun()}${steps}`);
  const b = writeInto(folder, 'b.yaml', `${shortRun(['stopTime: 0.4 s', 'stopTime: 0.5 s'])}${steps}`);
  const { exit, out, err } = await runCommand(folder, ['compare', a, b, '--json']);
  expect(exit).toBe(2);
  expect(err).toMatch(/^a\.yaml: .*100 integration steps[^\n]*\nb\.yaml: /u);
  const data: CompareFile = JSON.parse(out);
  expect(data.inputs).toEqual([{ path: 'limits.stopTime', a: '0.4 s', b: '0.5 s' }]);
  expect(data.a.usable).toBe(false);
  expect(filesBelow(folder)).toEqual(['a.yaml', 'b.yaml']);
}, 30_000);

it('tells what is wrong in both files at once', async () => {
  const folder = workFolder();
  const a = writeInto(folder, 'a.yaml', shortRun(['poles: 4', 'poles: 3']));
  const b = writeInto(folder, 'b.yaml', shortRun(['frequency: 50 Hz', 'frequency: 50']));
  const { exit, out, err } = await runCommand(folder, ['compare', a, b]);
  expect({ exit, out }).toEqual({ exit: 1, out: '' });
  expect(err).toMatch(/^a\.yaml:\d+:\d+ machine\.poles: .*\nb\.yaml:\d+:\d+ supply\.frequency: /u);
});
