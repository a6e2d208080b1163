/** The verdict as people and scripts get it: exit codes, one page of text, JSON, and the folder. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { displayWidth } from '../../src/report/displayWidth.ts';
import { formatNumber } from '../../src/report/formatQuantity.ts';
import type { SuitabilityFile } from '../../src/report/suitabilityFile.ts';
import { runCommand } from '../support/commandLine.ts';
import { shortRun } from '../support/shortRun.ts';
import { filesBelow, workFolder, writeInto } from '../support/workFolder.ts';

/** The section `contactors` of the example, without which nothing can be said of contacts. */
function withoutContactors(): string {
  const text = shortRun();
  const from = text.indexOf('\ncontactors:');
  const to = text.indexOf('\nlimits:');
  if (from < 0 || to < from) throw new Error('the example has no section contactors before its limits');
  return text.slice(0, from) + text.slice(to);
}

describe('a suitable scenario', () => {
  it('ends with 0, fits the page, and writes the folder whose data say what the terminal says', async () => {
    const folder = workFolder();
    const file = writeInto(folder, 'belt.yaml', shortRun());
    const { exit, out, err } = await runCommand(folder, ['suitability', file]);
    expect({ exit, err }).toEqual({ exit: 0, err: '' });
    expect(out.split('\n').filter((line) => displayWidth(line) > 80)).toEqual([]);
    const report = path.join('reports', 'belt', 'suitability.html');
    expect(out).toContain(`Report: ${report}`);
    expect(filesBelow(folder)).toEqual(
      expect.arrayContaining(['reports/belt/suitability.html', 'reports/belt/suitability.json']),
    );
    const data: SuitabilityFile = JSON.parse(
      readFileSync(path.join(folder, 'reports', 'belt', 'suitability.json'), 'utf8'),
    );
    expect(data.verdict.outcome).toBe('suitable');
    expect(out.replaceAll('\n', ' ')).toContain(data.verdict.sentence);
    // The verdict stands before every table.
    expect(out.indexOf('Plugging is suitable')).toBeLessThan(out.indexOf('Criterion'));
    const stop = data.criteria.find(({ key }) => key === 'stopTime');
    expect(stop?.limit).toBe(0.4);
    expect(out).toMatch(
      new RegExp(
        `Time to zero speed +${formatNumber(stop?.value ?? Number.NaN)} s +≤ 0\\.400 s .* pass`,
        'u',
      ),
    );
    const plug = data.alternatives.find(({ name }) => name === 'plug');
    expect(out).toMatch(new RegExp(`^plugging +${formatNumber(plug?.time ?? Number.NaN)} `, 'mu'));
    // Data that the example states: plant and tag of its title block, no star point to change.
    expect(out.split('\n')[0]).toMatch(/^Withering house 2 · B-07/u);
    expect(data.alternatives.find(({ name }) => name === 'starPlugging')?.missing).toContain('star');
    expect(data.extremes).toBeNull();
  }, 30_000);
});

describe('exit codes', () => {
  it('4 where a section that the verdict needs is missing; --json prints the same and writes nothing', async () => {
    const folder = workFolder();
    const file = writeInto(folder, 'belt.yaml', withoutContactors());
    const { exit, out, err } = await runCommand(folder, ['suitability', file, '--json']);
    expect({ exit, err }).toEqual({ exit: 4, err: '' });
    const data: SuitabilityFile = JSON.parse(out);
    expect(data.verdict.outcome).toBe('notJudged');
    const life = data.criteria.find(({ key }) => key === 'contactLife');
    expect(life).toMatchObject({ value: null, outcome: 'notJudged' });
    expect(life?.missing).toContain('contactors is missing');
    expect(data.wear).toMatchObject({ contactors: null });
    expect(data.wear.missing).toContain('contactors');
    expect(filesBelow(folder)).toEqual([file]);
  }, 30_000);

  it('3 where the contactors short-circuit the lines, with the reason in the verdict', async () => {
    const folder = workFolder();
    // Contacts apart for 1 ms: less than a pole needs to meet its current zero.
    const text = shortRun(
      ['closingTime: 18 ms', 'closingTime: 10 ms'],
      ['changeoverDelay: 12 ms', 'changeoverDelay: 0 ms'],
    );
    const { exit, out } = await runCommand(folder, ['suitability', writeInto(folder, 'a.yaml', text)]);
    expect(exit).toBe(3);
    expect(out.replaceAll('\n', ' ')).toMatch(/Plugging is not suitable by these criteria: .*short circuit/u);
  }, 30_000);

  it('3 where a limit is exceeded, in US units', async () => {
    const folder = workFolder();
    const text = withoutContactors().replace(/couplingTorque: [^#]*/u, 'couplingTorque: 300 N m ');
    const file = writeInto(folder, 'a.yaml', text);
    const { exit, out } = await runCommand(folder, ['suitability', file, '--units', 'us', '--out', 'here']);
    expect(exit).toBe(3);
    // 300 N·m over 1.35582 N·m in a lbf·ft.
    expect(out).toMatch(/Torque of the shaft +\d+ lbf·ft +≤ 221 lbf·ft .*FAIL/u);
    // Class 155 in air of 45 °C by IEC 60034-1: 45 + 105 − 5 K. Temperatures are in °C in both systems, as in NEMA MG 1.
    expect(out).toMatch(/Winding temperature +[\d.]+ °C +≤ 145 °C/u);
    expect(out).not.toMatch(/N·m|kJ|°F/u);
    expect(filesBelow(path.join(folder, 'here'))).toContain('suitability.html');
  }, 30_000);

  it('2 where the integration does not come to an end: no figure of it is judged', async () => {
    const folder = workFolder();
    const file = writeInto(folder, 'a.yaml', `${shortRun()}solver: { maxSteps: 100 }\n`);
    const { exit, out, err } = await runCommand(folder, ['suitability', file, '--json']);
    expect(exit).toBe(2);
    expect(err).toMatch(/No verdict.*100 integration steps/u);
    const { criteria }: SuitabilityFile = JSON.parse(out);
    expect(criteria.filter(({ value }) => value !== null)).toEqual([]);
  }, 30_000);

  it.each([
    ['an option it does not have', ['suitability', 'a.yaml', '--fast'], /unknown option '--fast'/u],
    ['units it does not have', ['suitability', 'a.yaml', '--units', 'cgs'], /cgs.*si, us/u],
    ['no file', ['suitability'], /missing required argument 'FILE'/u],
    ['one file to compare', ['compare', 'a.yaml'], /missing required argument 'B'/u],
    ['wear without a log', ['wear', 'a.yaml'], /missing required argument 'LOG'/u],
    ['a file that does not exist', ['suitability', 'none.yaml'], /none\.yaml: there is no such file/u],
    ['an unknown option of compare', ['compare', 'a', 'b', '--extremes'], /unknown option '--extremes'/u],
  ])('1 for %s', async (_, args, message) => {
    const { exit, out, err } = await runCommand(workFolder(), args);
    expect({ exit, out }).toEqual({ exit: 1, out: '' });
    expect(err).toMatch(message);
  });

  it('1 for a section that is wrong, with line and column', async () => {
    const folder = workFolder();
    const text = shortRun().replace('stopTime: 0.4 s', 'stopTime: 0.4');
    const line = text.split('\n').findIndex((row) => row.includes('stopTime')) + 1;
    const { exit, err } = await runCommand(folder, ['suitability', writeInto(folder, 'a.yaml', text)]);
    expect(exit).toBe(1);
    expect(err).toMatch(new RegExp(`^a\\.yaml:${line}:\\d+ limits\\.stopTime: `, 'u'));
  });
});
