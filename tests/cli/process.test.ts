import path from 'node:path';
import { expect, it, vi } from 'vitest';
import { runProcess } from '../support/commandLine.ts';
import { shortRun } from '../support/shortRun.ts';
import { filesBelow, workFolder, writeInto } from '../support/workFolder.ts';

// A process starts in half a second; a busy machine may need many times that.
vi.setConfig({ testTimeout: 60_000 });

/** Makes Node report another version to everything it runs. */
function pretend(version: string): string[] {
  const code = `Object.defineProperty(process, 'versions', { value: { ...process.versions, node: '${version}' } });`;
  return ['--import', `data:text/javascript,${encodeURIComponent(code)}`];
}

it('from any folder a file is simulated and the report stands below that folder', async () => {
  const folder = workFolder();
  const file = writeInto(folder, 'belt.yaml', shortRun());
  const { exit, out, err } = await runProcess([file], { cwd: folder });
  expect({ exit, err }).toEqual({ exit: 0, err: '' });
  expect(out).toContain(`Report: ${path.join('reports', 'belt', 'report.html')}`);
  expect(filesBelow(folder)).toContain('reports/belt/report.html');
  // stdout is a pipe here, no terminal.
  expect(out).not.toContain('\u001B');
});

it('--json on a pipe is JSON alone', async () => {
  const folder = workFolder();
  const file = writeInto(folder, 'belt.yaml', shortRun());
  const { exit, out, err } = await runProcess([file, '--json'], { cwd: folder });
  expect({ exit, err }).toEqual({ exit: 0, err: '' });
  expect(JSON.parse(out).program.name).toBe('countertorque');
});

it('exit codes reach the caller', async () => {
  const folder = workFolder();
  const refused = await runProcess(['none.yaml'], { cwd: folder });
  expect(refused).toMatchObject({ exit: 1, out: '' });
  expect(refused.err).toMatch(/^none\.yaml: there is no such file[^\n]*\n$/u);
  const file = writeInto(folder, 'few.yaml', `${shortRun()}solver: { maxSteps: 100 }\n`);
  expect((await runProcess([file], { cwd: folder })).exit).toBe(2);
});

it('new asks nothing where nobody can answer', async () => {
  const { exit, out, err } = await runProcess(['new'], { cwd: workFolder() });
  expect({ exit, out }).toEqual({ exit: 1, out: '' });
  expect(err).toMatch(/^--power: is missing/u);
});

it('a reader that closes the pipe after the first line gets no stack trace', async () => {
  const { exit, err } = await runProcess(['schema'], { cwd: workFolder(), closeEarly: true });
  expect({ exit, err }).toEqual({ exit: 0, err: '' });
});

it.each(['12.22.0', '18.20.4', '20.18.3'])('Node %s is refused in one line', async (version) => {
  const run = await runProcess([], { cwd: workFolder(), node: pretend(version) });
  expect(run).toEqual({
    exit: 1,
    out: '',
    err: `countertorque needs Node 20.19 or later; this is Node ${version}\n`,
  });
});

it.each(['20.19.0', '22.0.0', '24.1.0'])('Node %s is accepted', async (version) => {
  const run = await runProcess(['--version'], { cwd: workFolder(), node: pretend(version) });
  expect(run).toMatchObject({ exit: 0, err: '' });
});
