import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { runCommand } from '../support/commandLine.ts';
import { exampleText } from '../support/examples.ts';
import { filesBelow, workFolder, writeInto } from '../support/workFolder.ts';

const EXAMPLE = exampleText('what-should-the-laboratory-set-show.yaml');
/** A light disc makes short runs, and its breaker is set too low. */
const LIGHT = EXAMPLE.replace('inertia: 0.059 kg m^2', 'inertia: 0.004 kg m^2').replace(
  'instantaneousTrip: 40 A',
  'instantaneousTrip: 15 A',
);
/** A start alone is a third of the runs, and a circuit without core a half of the work. */
const QUICK = LIGHT.replace(/^ {2}- \{ at: 3 s, do: plug \}.*\n/mu, '')
  .replace(/^ {2}ironLoss:.*\n/mu, '')
  .replace(/^ {2}mechanicalLoss:.*\n/mu, '');

describe('lab', () => {
  it('writes the procedure of a set and prints its readings', async () => {
    const folder = workFolder();
    const file = writeInto(folder, 'set.yaml', LIGHT);
    const { exit, out, err } = await runCommand(folder, ['lab', file]);
    expect({ exit, err }).toEqual({ exit: 0, err: '' });
    expect(out).toMatch(/^Step 7: Plug stop, ten times$/mu);
    expect(out).toMatch(/Pause after a start and plug stop: at least \d+ s/u);
    expect(out).toMatch(/^Step 7: .*\nThe crest of the current may go beyond .*21\.2 A/mu);
    expect(out).toMatch(/Time of the trials with their pauses: at least\s+\d+\s+min/u);
    expect(filesBelow(folder)).toEqual([
      'reports/set/laboratory.csv',
      'reports/set/laboratory.html',
      'set.yaml',
    ]);
    const html = readFileSync(path.join(folder, 'reports', 'set', 'laboratory.html'), 'utf8');
    expect(html).toContain('<h1>Laboratory set with a flywheel, 1.1 kW</h1>');
    expect(html).not.toMatch(/NaN|undefined|Infinity/u);
  });

  it('prints JSON in SI; a blank sheet has names of its own, and nothing in it that is expected', async () => {
    const folder = workFolder();
    const file = writeInto(folder, 'set.yaml', QUICK);
    const { exit, out, err } = await runCommand(folder, ['lab', file, '--json', '--blank', '--out', 'here']);
    expect(exit).toBe(0);
    expect(err).toContain(path.join('here', 'laboratory-blank.html'));
    const { laboratoryVersion, steps } = JSON.parse(out);
    expect(laboratoryVersion).toBe(1);
    expect(steps[0].readings[0]).toMatchObject({ key: 'terminalResistance', unit: 'Ω', predicted: 12.8 });
    expect(filesBelow(folder)).toEqual([
      'here/laboratory-blank.csv',
      'here/laboratory-blank.html',
      'set.yaml',
    ]);
    const html = readFileSync(path.join(folder, 'here', 'laboratory-blank.html'), 'utf8');
    expect(html).not.toMatch(/12\.8 Ω|In order within/u);
  });

  it('refuses a scenario in which nothing is started, with its place in the file', async () => {
    const folder = workFolder();
    const file = writeInto(
      folder,
      'set.yaml',
      EXAMPLE.replace(/^actions:\n(?: {2}- .*\n)+/mu, 'actions: [{ at: 0 s, do: coast }]\n'),
    );
    const { exit, out, err } = await runCommand(folder, ['lab', file]);
    expect({ exit, out }).toEqual({ exit: 1, out: '' });
    expect(err).toMatch(/^set\.yaml:\d+:\d+ actions: .*nothing for a laboratory to measure/u);
  });

  it.each([
    [
      'faults',
      '  faults: [{ kind: dead pole, pole: A, contactor: reverse }]\n',
      /^set\.yaml:\d+:\d+ starter\.faults: .*a whole set/u,
    ],
    ['a weight', '', /^set\.yaml:\d+:\d+ load\.torque: .*runs away/u],
  ])('refuses a set with %s, with its place in the file', async (_, more, message) => {
    const folder = workFolder();
    const set =
      more === ''
        ? EXAMPLE.replace('  torque:\n', '  torque:\n    - { kind: gravity, torque: -2 N m }\n')
        : EXAMPLE.replace('starter:\n', `starter:\n${more}`);
    const file = writeInto(folder, 'set.yaml', set);
    const { exit, out, err } = await runCommand(folder, ['lab', file]);
    expect({ exit, out }).toEqual({ exit: 1, out: '' });
    expect(err).toMatch(message);
    expect(filesBelow(folder)).toEqual(['set.yaml']);
  });
});
