import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/cli/inputError.ts';
import { EXIT, type ExitCode } from '../../src/cli/io.ts';
import { type SheetCommandOptions, sheetCommand } from '../../src/cli/sheetCommand.ts';
import { runCommand } from '../support/commandLine.ts';
import { editedExample, filesBelow, workFolder, writeInto } from '../support/workFolder.ts';

const CONTROL = `
  control:
    scheme: reversing through stop
    readyRelay: yes
`;

/** The example that plugs well, with a control circuit in place of its change-over delay and commands. */
const WITH_CONTROL = editedExample(
  ['  changeoverDelay: 12 ms\n', CONTROL.slice(1)],
  ['do: start forward', 'do: press forward'],
  ['do: plug', 'do: press stop'],
);

interface SheetRun {
  readonly exit: ExitCode;
  readonly out: string;
  readonly err: string;
}

function run(folder: string, file: string, options: SheetCommandOptions): SheetRun {
  let out = '';
  let err = '';
  const exit = sheetCommand(file, options, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    cwd: folder,
    colour: false,
  });
  return { exit, out, err };
}

describe('the sheet command', () => {
  it('writes the sheet and its table into the report folder and says how the tests came out', () => {
    const folder = workFolder();
    const file = writeInto(folder, 'belt.yaml', WITH_CONTROL);
    const { exit, out, err } = run(folder, file, { units: 'si' });
    expect({ exit, err }).toEqual({ exit: EXIT.done, err: '' });
    expect(filesBelow(folder)).toEqual(['belt.yaml', 'reports/belt/sheet.csv', 'reports/belt/sheet.html']);
    expect(out).toMatch(/^All \d+ tests agree with what should happen\.$/mu);
    expect(out).toContain(`Sheet: ${path.join('reports', 'belt', 'sheet.html')}\n`);
    expect(out).toContain(`Table: ${path.join('reports', 'belt', 'sheet.csv')}\n`);
    const html = readFileSync(path.join(folder, 'reports', 'belt', 'sheet.html'), 'utf8');
    const csv = readFileSync(path.join(folder, 'reports', 'belt', 'sheet.csv'), 'utf8');
    const count = Number(/All (\d+) tests/u.exec(out)?.[1]);
    expect(html.match(/<td class="number">/gu)?.length).toBe(count);
    expect(csv.trimEnd().split('\r\n').length).toBe(count + 1);
    expect(html).toContain('<h1>Tea-withering belt, 7.5 kW</h1>');
    expect(html).not.toMatch(/NaN|undefined|Infinity/u);
    expect(csv).not.toMatch(/NaN|undefined|Infinity/u);
  });

  it('refuses a scenario without a control circuit and says what is missing', () => {
    const folder = workFolder();
    const file = writeInto(folder, 'bare.yaml', editedExample());
    const attempt = () => run(folder, file, { units: 'si' });
    expect(attempt).toThrow(InputError);
    expect(attempt).toThrow(
      /^bare\.yaml: the starter has no control circuit to test; expected starter\.control with a scheme/u,
    );
    expect(filesBelow(folder)).toEqual(['bare.yaml']);
  });

  it('is a verb of the command line, which prints what is wrong with the file', async () => {
    const folder = workFolder();
    const file = writeInto(folder, 'bare.yaml', editedExample());
    const { exit, out, err } = await runCommand(folder, ['sheet', file, '--units', 'us']);
    expect({ exit, out }).toEqual({ exit: EXIT.inputError, out: '' });
    expect(err).toMatch(/^bare\.yaml: the starter has no control circuit to test/u);
  });

  it('writes where --out says and in the units asked for', () => {
    const folder = workFolder();
    const file = writeInto(folder, 'belt.yaml', WITH_CONTROL);
    run(folder, file, { units: 'us', out: 'here' });
    expect(filesBelow(folder)).toEqual(['belt.yaml', 'here/sheet.csv', 'here/sheet.html']);
    expect(readFileSync(path.join(folder, 'here', 'sheet.html'), 'utf8')).toContain('lb·ft²');
  });
});
