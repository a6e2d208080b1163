import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { runCommand } from '../support/commandLine.ts';
import { shortRun } from '../support/shortRun.ts';
import { filesBelow, workFolder, writeInto } from '../support/workFolder.ts';

/** Runs that cannot be completed: what is changed, and what the status must say. */
const FAILED = [
  {
    name: 'a dead time shorter than the arcs',
    // Contacts apart for 1 ms: less than a pole needs to meet its current zero.
    text: shortRun(
      ['closingTime: 18 ms', 'closingTime: 10 ms'],
      ['changeoverDelay: 12 ms', 'changeoverDelay: 0 ms'],
    ),
    code: 'lineToLineShortCircuit',
    says: /short circuit/iu,
  },
  {
    name: 'an end before the zero-speed switch opens',
    text: `${shortRun()}solver: { endTime: 0.42 s }\n`,
    code: 'switchNeverOpened',
    says: /switch/u,
  },
  {
    name: 'too few integration steps',
    text: `${shortRun()}solver: { maxSteps: 100 }\n`,
    code: 'stepLimit',
    says: /steps/u,
  },
];

it.each(FAILED)('with $name the exit code is 2 and the status comes first', async ({ text, code, says }) => {
  const folder = workFolder();
  const file = writeInto(folder, 'failed.yaml', text);
  const { exit, out, err } = await runCommand(folder, [file]);
  expect(exit).toBe(2);
  expect(err).toMatch(says);
  expect(err.trim().split('\n')).toHaveLength(1);
  expect(out).toMatch(/^! The run did not end as asked/u);
  expect(out.slice(0, out.indexOf('Tea-withering'))).toMatch(says);
  const report = path.join(folder, 'reports', 'failed');
  const { status } = JSON.parse(readFileSync(path.join(report, 'summary.json'), 'utf8'));
  expect(status).toMatchObject({ code, successful: false });
  expect(status.time).toBeGreaterThan(0);
  expect(readFileSync(path.join(report, 'report.html'), 'utf8')).toContain('role="alert"');
});

it.each(FAILED)('with $name --json still prints the summary, without NaN', async ({ text, code }) => {
  const folder = workFolder();
  const file = writeInto(folder, 'failed.yaml', text);
  const { exit, out } = await runCommand(folder, [file, '--json']);
  expect(exit).toBe(2);
  expect(JSON.parse(out).status.code).toBe(code);
  expect(out).not.toMatch(/NaN|Infinity/u);
  expect(filesBelow(folder)).toEqual([file]);
});
