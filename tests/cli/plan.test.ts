import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { EXIT } from '../../src/cli/io.ts';
import { runCommand } from '../support/commandLine.ts';
import { exampleText } from '../support/examples.ts';
import { filesBelow, workFolder, writeInto } from '../support/workFolder.ts';

const HEADER = 'tag,power,voltage,frequency,contacts changed\n';

describe('the plan command on the example', () => {
  it('plans the starters, names those that lack data, and writes list, report and calendar', async () => {
    const folder = workFolder();
    const file = writeInto(
      folder,
      'when-are-the-contacts-due.csv',
      exampleText('when-are-the-contacts-due.csv'),
    );
    const run = await runCommand(folder, ['plan', file]);
    expect({ exit: run.exit, err: run.err }).toEqual({ exit: EXIT.done, err: '' });
    expect(filesBelow(folder)).toEqual([
      'reports/when-are-the-contacts-due/plan.csv',
      'reports/when-are-the-contacts-due/plan.html',
      'reports/when-are-the-contacts-due/plan.ics',
      'when-are-the-contacts-due.csv',
    ]);
    const text = (name: string) =>
      readFileSync(path.join(folder, 'reports', 'when-are-the-contacts-due', name), 'utf8');
    const [list, html, calendar] = [text('plan.csv'), text('plan.html'), text('plan.ics')];

    // The latest date in the table is the inspection of S1.
    expect(run.out).toContain(
      '6 starters planned as of 2026-02-27; 2 not planned for lack of data: D1, L1.\n2026-02-27 is the latest date in the table and may be old: give --as-of YYYY-MM-DD for today.\n',
    );
    expect(html).toContain('2026-02-27 is the latest date in the table and may be old');
    expect(run.out).toContain('  D1: rated current of the contactor (contactor current AC-3)\n');
    const order = [...list.matchAll(/^([A-Z]\d),[^\n]*,(?:planned as of 2026-02-27|not planned)/gmu)].map(
      ([, tag]) => tag,
    );
    expect([...order].sort()).toEqual(['D1', 'F1', 'L1', 'M1', 'M2', 'S1', 'T1', 'W1']);
    expect(order.slice(-2)).toEqual(['D1', 'L1']);
    // Alike but for rhythm and date: 90 a day since March come before 60 a day since November.
    expect(order.indexOf('M2')).toBeLessThan(order.indexOf('M1'));
    // 21 400 operations in 242 days wore half: 242 days more, whatever the simulation says.
    expect(list).toMatch(/^S1,stave saw,contacts of the reversing contactor,2026-10-27,/mu);
    // 100 000 movements of the switch at 150 a day from 2024-10-01: 666.7 days.
    expect(list).toMatch(/^W1,wash drum,zero-speed switch \(mechanical life\),2026-07-29,/mu);
    expect(list).toMatch(/^F1,loft fan,contacts of the forward contactor,/mu);
    expect(calendar.match(/BEGIN:VEVENT/gu)?.length).toBe(5);
    expect(html).toContain('<h1>when-are-the-contacts-due</h1>');
    for (const written of [list, html, calendar, run.out])
      expect(written).not.toMatch(/NaN|undefined|Infinity|\[object/u);
  });
});

describe('the plan command', () => {
  it('plans from the day that is stated, and refuses one before a date of the table', async () => {
    const folder = workFolder();
    const file = writeInto(folder, 'few.csv', `${HEADER}P1,,,,2026-02-01\n`);
    const good = await runCommand(folder, ['plan', file, '--as-of', '2028-02-29', '--out', 'here']);
    expect(good.exit).toBe(EXIT.done);
    expect(good.out).toContain('0 starters planned as of 2028-02-29; 1 not planned for lack of data: P1.');
    const report = readFileSync(path.join(folder, 'here', 'plan.html'), 'utf8');
    for (const written of [good.out, report]) expect(written).not.toContain('may be old');
    expect(good.out).toContain('Calendar: none: nothing is due within the horizon');
    expect(filesBelow(folder)).toEqual(['few.csv', 'here/plan.csv', 'here/plan.html']);
    const early = await runCommand(folder, ['plan', file, '--as-of', '2026-01-31']);
    expect(early.exit).toBe(EXIT.inputError);
    expect(early.err).toBe(
      '--as-of 2026-01-31: few.csv has a later date, 2026-02-01 (P1); expected that day or a later one\n',
    );
    const none = await runCommand(folder, ['plan', file, '--as-of', '2026-02-29']);
    expect(none.exit).toBe(EXIT.inputError);
    expect(none.err).toMatch(/^--as-of 2026-02-29: no date of the calendar; expected year, month and day/u);
  });

  it.each(['2200-01-01', '9999-12-31', '1949-12-31'])(
    'refuses to plan from %s, where no table has a date',
    async (asOf) => {
      const folder = workFolder();
      const file = writeInto(folder, 'few.csv', `${HEADER}P1,,,,\n`);
      const { exit, err } = await runCommand(folder, ['plan', file, '--as-of', asOf]);
      expect(exit).toBe(EXIT.inputError);
      expect(err).toBe(`--as-of ${asOf}: out of range; expected a date from 1950 to 2199, as in the table\n`);
      const last = await runCommand(folder, ['plan', file, '--as-of', '2199-12-31']);
      expect(last.exit).toBe(EXIT.done);
    },
  );

  it('writes a list of a table with tags and descriptions as long as cells may be, and with several lines', async () => {
    const folder = workFolder();
    const [header, first] = exampleText('when-are-the-contacts-due.csv').split('\n');
    const long = first!.replace(
      /^M1,tea-withering belt/u,
      `${'t'.repeat(200)},"${'d'.repeat(150)}\n${'e'.repeat(40)}"`,
    );
    const file = writeInto(folder, 'long.csv', `${header}\n${long}\n`);
    const { exit, out } = await runCommand(folder, ['plan', file]);
    expect(exit).toBe(EXIT.done);
    expect(out).toContain('1 starter planned as of 2025-11-03.\n');
  });

  it('asks for UTF-8 where a table is saved otherwise', async () => {
    const folder = workFolder();
    const file = path.join(folder, 'latin.csv');
    writeFileSync(file, Buffer.from('tag,description\nP1,tr\xE9mie\n', 'latin1'));
    const { exit, err } = await runCommand(folder, ['plan', 'latin.csv']);
    expect(exit).toBe(EXIT.inputError);
    expect(err).toMatch(/^latin\.csv:2:4 description of P1: holds U\+FFFD.*save the table as UTF-8\n$/u);
  });

  it('lists starters whose motor cannot drive their load in words of the table', async () => {
    const folder = workFolder();
    const [header, first] = exampleText('when-are-the-contacts-due.csv').split('\n');
    const file = writeInto(folder, 'hard.csv', `${header}\n${first!.replace('22 N m', '500 N m')}\n`);
    const { exit, out } = await runCommand(folder, ['plan', file]);
    expect(exit).toBe(EXIT.done);
    expect(out).toContain(
      '\nCannot be planned:\n  M1: the motor cannot drive this load at any steady speed (power, load kind, load torque)\n',
    );
    expect(out).not.toMatch(/initial|t = 0|lack of data/u);
  });

  it('reads no clock: without any date it asks for one', async () => {
    const folder = workFolder();
    const file = writeInto(folder, 'few.csv', `${HEADER}P1,,,,\n`);
    const { exit, err } = await runCommand(folder, ['plan', file]);
    expect(exit).toBe(EXIT.inputError);
    expect(err).toMatch(/^few\.csv: no row has a date to plan from; expected one, or --as-of YYYY-MM-DD/u);
  });

  it('lists all that is wrong with a table and writes nothing', async () => {
    const folder = workFolder();
    const file = writeInto(folder, 'few.csv', `${HEADER}P1,7.5,400 V,50 Hz,2026-02-01\nP1,x,,,\n`);
    const { exit, out, err } = await runCommand(folder, ['plan', file]);
    expect({ exit, out }).toEqual({ exit: EXIT.inputError, out: '' });
    expect(err.trimEnd().split('\n').length).toBe(3);
    expect(err).toMatch(/^few\.csv:2:4 power of P1: "7\.5" has no unit/u);
    expect(filesBelow(folder)).toEqual(['few.csv']);
  });

  it.each([
    ['nowhere.csv', /^nowhere\.csv: there is no such file or folder; expected a table of starters \(CSV\)/u],
    ['.', /^\.: it is a folder; expected a table of starters/u],
  ])('refuses %s', async (file, message) => {
    const { exit, err } = await runCommand(workFolder(), ['plan', file]);
    expect(exit).toBe(EXIT.inputError);
    expect(err).toMatch(message);
  });
});
