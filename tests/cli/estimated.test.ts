import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { runCommand } from '../support/commandLine.ts';
import { shortRun } from '../support/shortRun.ts';
import { workFolder, writeInto } from '../support/workFolder.ts';

const FILE = `
title: Half a nameplate
supply: { lineVoltage: 400 V, frequency: 50 Hz }
machine:
  nameplate: { power: 7.5 kW, speed: 1455 rpm, current: 14.8 A, powerFactor: 0.83, efficiency: 88 % }
load: { inertia: 0.05 kg m^2, torque: { kind: friction, torque: 5 N m } }
starter: { zeroSpeedSwitch: { dropOutSpeed: 60 rpm, pickUpSpeed: 120 rpm } }
initial: running forward
actions: [{ at: 0.1 s, do: plug }]
`;

it('check says how well a nameplate is met and what was not on it, and nothing of the kind for a circuit', async () => {
  const folder = workFolder();
  const { exit, out, err } = await runCommand(folder, ['check', writeInto(folder, 'plate.yaml', FILE)]);
  expect({ exit, err }).toEqual({ exit: 0, err: '' });
  expect(out).toMatch(/^plate\.yaml: in order \(.*\)\nCircuit estimated from the nameplate, /u);
  const notGiven = out.split('\n').find((line) => line.startsWith('Not given:'));
  expect(notGiven).toMatch(/locked-rotor current \(IEC 60034-12, design N/u);
  expect(notGiven).not.toMatch(/rated current|power factor|efficiency/u);
  const circuit = await runCommand(folder, ['check', writeInto(folder, 'circuit.yaml', shortRun())]);
  expect(circuit.out.trimEnd().split('\n')).toHaveLength(1);
});

it('simulate says so too, in the terminal, the report and the summary', { timeout: 60_000 }, async () => {
  const folder = workFolder();
  const file = writeInto(folder, 'plate.yaml', FILE);
  const { exit, out } = await runCommand(folder, [file]);
  expect(exit).toBe(0);
  expect(out).toContain('Circuit estimated from the nameplate');
  const report = path.join(folder, 'reports', 'plate');
  expect(readFileSync(path.join(report, 'report.html'), 'utf8')).toContain('From nameplate to circuit');
  const summary = JSON.parse(readFileSync(path.join(report, 'summary.json'), 'utf8'));
  expect(summary.estimation.from).toBe('nameplate');
  expect(summary.nameplate.powerFactor).toBe(0.83);
  const { out: json } = await runCommand(folder, [file, '--json']);
  expect(JSON.parse(json)).toEqual(summary);
});

it.each(['simulate', 'check', 'motor'])(
  '%s refuses a contradictory nameplate with its place',
  async (verb) => {
    const folder = workFolder();
    const file = writeInto(folder, 'plate.yaml', FILE.replace('7.5 kW', '15 kW'));
    const { exit, out, err } = await runCommand(folder, [verb, file]);
    expect({ exit, out }).toEqual({ exit: 1, out: '' });
    expect(err).toMatch(/^plate\.yaml:5:\d+ machine\.nameplate\.power: /u);
  },
);
