import { mkdirSync, truncateSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { reasonOf } from '../../src/cli/inputError.ts';
import { type CommandRun, runCommand } from '../support/commandLine.ts';
import { shortRun } from '../support/shortRun.ts';
import { editedExample, filesBelow, workFolder, writeInto } from '../support/workFolder.ts';

/** Exit code 1, nothing on stdout, one line on stderr that matches. */
function expectRefusal({ exit, out, err }: CommandRun, message: RegExp): void {
  expect({ exit, out }).toEqual({ exit: 1, out: '' });
  expect(err).toMatch(message);
  expect(err.trimEnd().split('\n')[0]).toMatch(message);
  expect(err).not.toContain('    at ');
}

/** Line and column, from 1, of the first place where a text holds a piece. */
function placeOf(text: string, piece: string): string {
  const before = text.slice(0, text.indexOf(piece)).split('\n');
  return `${before.length}:${before.at(-1)!.length + 1}`;
}

it.each([
  ['an option that does not exist', ['--fast'], /unknown option '--fast'/u],
  ['a unit system that does not exist', ['--units', 'imperial'], /imperial.*si, us/u],
  [
    'a verb that does not exist',
    ['plug'],
    /^plug: neither a verb \(simulate, suitability, compare, plan, wear, survey, merge, check, new, motor, interlocks, sheet, lab, wiring, schema/u,
  ],
  ['a verb that does not exist, before a file', ['plug', 'a.yaml'], /^plug: neither a verb/u],
  ['two files', ['a.yaml', 'b.yaml'], /^b\.yaml: one word too many/u],
  ['a verb without its file', ['simulate'], /missing required argument 'FILE'/u],
  ['check without its file', ['check'], /missing required argument 'FILE'/u],
  ['motor without its file', ['motor'], /missing required argument 'FILE'/u],
  ['--out without a folder', ['a.yaml', '--out'], /--out <DIR>.*argument missing/u],
  ['an option before the verb', ['--json', 'simulate', 'a.yaml'], /--json stands before simulate/u],
  ['an option the verb does not have', ['check', 'a.yaml', '--json'], /unknown option '--json'/u],
  ['a file that does not exist', ['none.yaml'], /^none\.yaml: there is no such file/u],
  ['an empty name', ['simulate', ''], /it is a folder/u],
])('%s is refused', async (_, args, message) => {
  expectRefusal(await runCommand(workFolder(), args), message);
});

it.each([
  [[]],
  [['a.yaml']],
  [['simulate', 'a.yaml']],
  [['simulate', 'a.yaml', '--json']],
  [['suitability', 'a.yaml']],
  [['compare', 'a.yaml', 'b.yaml']],
  [['plan', 'a.csv']],
  [['survey', 'a.yaml']],
  [['merge', 'a']],
  [['motor', 'a.yaml']],
  [['sheet', 'a.yaml']],
  [['lab', 'a.yaml']],
  [['wiring', 'a.yaml']],
])('%j with an --out that names nothing is refused before anything is read or run', async (args) => {
  const folder = workFolder();
  for (const out of ['', ' '])
    expectRefusal(
      await runCommand(folder, [...args, '--out', out]),
      /^--out " ?": nothing is named; expected a folder/u,
    );
  expect(filesBelow(folder)).toEqual([]);
});

it('a folder given as the file is refused, whatever its name', async () => {
  const folder = workFolder();
  mkdirSync(path.join(folder, 'word'));
  mkdirSync(path.join(folder, 'a.yaml'));
  expectRefusal(await runCommand(folder, ['word']), /^word: it is a folder/u);
  expectRefusal(await runCommand(folder, ['check', 'a.yaml']), /^a\.yaml: it is a folder/u);
});

it('a file below a file is refused with the reason', async () => {
  const folder = workFolder();
  writeInto(folder, 'a.yaml', 'title: x');
  expectRefusal(await runCommand(folder, [path.join('a.yaml', 'b.yaml')]), /b\.yaml: .*; expected/u);
});

it.each([
  ['EACCES', 'access is not permitted'],
  ['EPERM', 'access is not permitted'],
  ['ENOSPC', 'the disk is full'],
  ['EROFS', 'the disk is read-only'],
])('the system error %s is told in words', (code, words) => {
  expect(reasonOf(Object.assign(new Error(code), { code }))).toBe(words);
});

it('a file of 50 MB is refused before it is read', async () => {
  const folder = workFolder();
  const file = writeInto(folder, 'large.yaml', '');
  truncateSync(path.join(folder, file), 50_000_000);
  const before = performance.now();
  expectRefusal(await runCommand(folder, [file]), /^large\.yaml: 50\.0 MB is no scenario/u);
  // Reading and parsing it would take longer; a second allows for a busy machine.
  expect(performance.now() - before).toBeLessThan(1000);
});

it('an --out that cannot be a folder is refused with the reason', async () => {
  const folder = workFolder();
  const file = writeInto(folder, 'belt.yaml', shortRun());
  writeInto(folder, 'taken', '');
  const { exit, err } = await runCommand(folder, [file, '--out', 'taken']);
  expect(exit).toBe(1);
  expect(err).toMatch(/a file stands where a folder is needed; expected a folder that can be written to/u);
  expect(filesBelow(folder)).toEqual(['belt.yaml', 'taken']);
});

it('all problems of a scenario are listed with line and column, by every verb', async () => {
  const folder = workFolder();
  const text = editedExample(
    ['lineVoltage: 400 V', 'lineVoltage: 400 A'],
    ['poles: 4', 'poles: 3'],
    ['magnetising: 39 ohm', 'magnetizing: 39 ohm'],
    ['inertia: 0.05 kg m^2', 'inertia: .nan'],
    ['openingTime: 9 ms', 'openingTime: 9'],
    ['do: plug', 'do: brake'],
  );
  const file = writeInto(folder, 'many.yaml', text);
  for (const verb of [[], ['simulate'], ['check'], ['motor']]) {
    const { exit, out, err } = await runCommand(folder, [...verb, file]);
    expect({ exit, out }).toEqual({ exit: 1, out: '' });
    const lines = err.trimEnd().split('\n');
    expect(lines.every((line) => /^many\.yaml:\d+:\d+ .*; expected /u.test(line))).toBe(true);
    for (const piece of ['400 A', '3 #', 'magnetizing', '.nan', '9 #', 'brake }'])
      expect(err).toContain(`many.yaml:${placeOf(text, piece)} `);
    // The key that was meant is missing as well.
    expect(lines).toHaveLength(7);
  }
  expect(filesBelow(folder)).toEqual([file]);
});

it.each(['simulate', 'check'])(
  '%s gives line and column also to what shows only when the circuit is solved',
  async (verb) => {
    const folder = workFolder();
    const tooStrong = shortRun(['power: 7.5 kW', 'power: 75 kW'], [', current: 14.6 A', '']);
    const overloaded = `${shortRun(['torque: 12 N m', 'torque: 900 N m'], ['breakaway: 18', 'breakaway: 950'])}initial: running forward\n`;
    const power = await runCommand(folder, [verb, writeInto(folder, 'power.yaml', tooStrong)]);
    expectRefusal(power, /machine\.rated\.power: this circuit delivers at most/u);
    expect(power.err).toContain(`power.yaml:${placeOf(tooStrong, '75 kW')} `);
    const load = await runCommand(folder, [verb, writeInto(folder, 'load.yaml', overloaded)]);
    expectRefusal(load, /initial: the machine cannot drive this load/u);
    expect(load.err).toContain(`load.yaml:${placeOf(overloaded, 'running forward')} `);
  },
);

it('keys and titles that carry escape sequences do not reach the terminal as such', async () => {
  const folder = workFolder();
  const file = writeInto(folder, 'hostile.yaml', 'title: "\\e[31mred"\n"\\e[2Jkey": 3\n');
  const { exit, err } = await runCommand(folder, ['check', file]);
  expect(exit).toBe(1);
  expect(err).not.toContain('\u001B');
});
