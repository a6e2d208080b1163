import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { displayWidth } from '../../src/report/displayWidth.ts';
import { runCommand } from '../support/commandLine.ts';
import { examplePath } from '../support/examples.ts';
import { shortRun } from '../support/shortRun.ts';
import { filesBelow, folderWithExamples, workFolder, writeInto } from '../support/workFolder.ts';

const ESCAPE = '\u001B';

it('a file alone is simulated, and the verb before it changes nothing', async () => {
  const folder = workFolder();
  const file = writeInto(folder, 'belt.yaml', shortRun());
  const alone = await runCommand(folder, [file]);
  const report = path.join(folder, 'reports', 'belt', 'report.html');
  const page = readFileSync(report, 'utf8');
  const withVerb = await runCommand(folder, ['simulate', file]);
  expect(alone.exit).toBe(0);
  expect(withVerb).toEqual(alone);
  expect(readFileSync(report, 'utf8')).toBe(page);
  expect(alone.out).toContain(`Report: ${path.join('reports', 'belt', 'report.html')}`);
  expect(alone.out).not.toContain('Next:');
});

it('a file without an ending whose name is a plain word is simulated too', async () => {
  const folder = workFolder();
  const { exit } = await runCommand(folder, [writeInto(folder, 'belt', shortRun())]);
  expect(exit).toBe(0);
});

it('--json prints the summary and nothing else, and writes no file', async () => {
  const folder = workFolder();
  const file = writeInto(folder, 'belt.yaml', shortRun());
  const { exit, out, err } = await runCommand(folder, [file, '--json']);
  expect(exit).toBe(0);
  expect(err).toBe('');
  const summary = JSON.parse(out);
  expect(summary.status.successful).toBe(true);
  expect(summary.metrics.plugPeakCurrent.unit).toBe('A');
  expect(filesBelow(folder)).toEqual([file]);
});

it('--json without a file prints the summary of the built-in example', async () => {
  const folder = workFolder();
  const { exit, out } = await runCommand(folder, ['--json']);
  expect(exit).toBe(0);
  expect(JSON.parse(out).scenario.title).toBe('Tea-withering belt, 7.5 kW');
  expect(filesBelow(folder)).toEqual([]);
});

it('--json with --out prints the same summary that it writes, and names the report on stderr', async () => {
  const folder = workFolder();
  const file = writeInto(folder, 'belt.yaml', shortRun());
  const { out, err } = await runCommand(folder, [file, '--json', '--out', 'here']);
  expect(out).toBe(readFileSync(path.join(folder, 'here', 'summary.json'), 'utf8'));
  expect(err).toBe(`report: ${path.join('here', 'report.html')}\n`);
});

it.each([
  ['spaces', 'two words'],
  ['letters beyond ASCII', 'Übersicht – 茶 привод'],
  ['folders that do not exist yet', path.join('a', 'b', 'c')],
  ['a leading dash after =', '-x'],
])('--out takes a folder with %s', async (_, name) => {
  const folder = workFolder();
  const file = writeInto(folder, 'belt.yaml', shortRun());
  const { exit, out } = await runCommand(folder, [file, `--out=${name}`]);
  expect(exit).toBe(0);
  expect(out).toContain(`Report: ${path.join(name, 'report.html')}`);
  expect(readFileSync(path.join(folder, name, 'report.html'), 'utf8')).toContain('</html>');
});

it('a scenario whose name has spaces and letters beyond ASCII gets a folder of that name', async () => {
  const folder = workFolder();
  const file = writeInto(folder, 'Förderband neu.yaml', shortRun());
  const { exit } = await runCommand(folder, [file]);
  expect(exit).toBe(0);
  expect(filesBelow(folder)).toContain('reports/Förderband neu/report.html');
});

it('--units us changes the units of terminal and report, not those of the summary', async () => {
  const folder = workFolder();
  const file = writeInto(folder, 'belt.yaml', shortRun());
  const us = await runCommand(folder, [file, '--units', 'us', '--out', 'us']);
  const si = await runCommand(folder, [file, '--units', 'si', '--out', 'si']);
  expect(us.out).toContain('lbf·ft');
  expect(us.out).not.toMatch(/N·m/u);
  expect(si.out).toContain('N·m');
  expect(si.out).not.toContain('lbf');
  expect(readFileSync(path.join(folder, 'us', 'report.html'), 'utf8')).toContain('lbf·ft');
  const summary = (name: string) => readFileSync(path.join(folder, name, 'summary.json'), 'utf8');
  expect(summary('us')).toBe(summary('si'));
});

it('--ascii draws the torque trace without a character beyond ASCII', async () => {
  const folder = workFolder();
  const file = writeInto(folder, 'belt.yaml', shortRun());
  const { out } = await runCommand(folder, [file, '--ascii']);
  const trace = out.slice(out.indexOf('Air-gap torque'), out.indexOf('Caution'));
  const rows = trace
    .split('\n')
    .slice(1)
    .map((line) => line.slice(8));
  expect(rows.join('')).toMatch(/^[ -~]+$/u);
  expect(out).not.toMatch(/\p{Script=Braille}/u);
});

it('colour comes only when it is welcome', async () => {
  const folder = workFolder();
  const file = writeInto(folder, 'belt.yaml', shortRun());
  expect((await runCommand(folder, [file], { colour: false })).out).not.toContain(ESCAPE);
  expect((await runCommand(folder, [file], { colour: true })).out).toContain(ESCAPE);
});

it.each([
  ['may-this-belt-be-plugged.yaml', 'si'],
  ['should-this-fan-be-plugged.yaml', 'si'],
  ['what-does-a-full-reversal-cost.yaml', 'us'],
])('no line about %s is wider than 80 columns', { timeout: 60_000 }, async (name, units) => {
  const folder = folderWithExamples();
  const { exit, out } = await runCommand(folder, [examplePath(name), '--units', units]);
  expect(exit).toBe(0);
  expect(out.split('\n').filter((line) => displayWidth(line) > 80)).toEqual([]);
});

it('two runs write the same files to the last byte', async () => {
  const folder = workFolder();
  const file = writeInto(folder, 'belt.yaml', shortRun());
  await runCommand(folder, [file, '--out', 'one']);
  await runCommand(folder, [file, '--out', 'two']);
  const names = filesBelow(path.join(folder, 'one'));
  expect(names).toHaveLength(8);
  const differing = names.filter(
    (name) =>
      !readFileSync(path.join(folder, 'one', name)).equals(readFileSync(path.join(folder, 'two', name))),
  );
  expect(differing).toEqual([]);
});
