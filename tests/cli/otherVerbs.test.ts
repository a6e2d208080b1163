import { readFileSync } from 'node:fs';
import path from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { expect, it } from 'vitest';
import { parse } from 'yaml';
import { PROJECT, runCommand } from '../support/commandLine.ts';
import { EXAMPLE_SCENARIOS, examplePath, exampleText } from '../support/examples.ts';
import { filesBelow, folderWithExamples, workFolder } from '../support/workFolder.ts';

it('check says that a good file is in order and writes nothing', async () => {
  const folder = folderWithExamples();
  const before = filesBelow(folder);
  for (const name of EXAMPLE_SCENARIOS) {
    const file = examplePath(name);
    const title = /^title: (.*)$/mu.exec(exampleText(name))?.[1];
    const { exit, out, err } = await runCommand(folder, ['check', file]);
    expect({ exit, err }).toEqual({ exit: 0, err: '' });
    const [first, ...estimated] = out.trimEnd().split('\n');
    expect(first).toBe(`${file}: in order (${title})`);
    if (name.includes('nameplate')) expect(estimated[0]).toMatch(/^Circuit estimated from the nameplate/u);
    else expect(estimated).toEqual([]);
  }
  expect(filesBelow(folder)).toEqual(before);
});

it('schema prints a JSON Schema that accepts the examples and refuses a wrong key', async () => {
  const { exit, out, err } = await runCommand(workFolder(), ['schema']);
  expect({ exit, err }).toEqual({ exit: 0, err: '' });
  expect(await runCommand(workFolder(), ['schema', 'scenario'])).toEqual({ exit, out, err });
  const validate = new Ajv2020({ strict: false }).compile(JSON.parse(out));
  for (const name of EXAMPLE_SCENARIOS) expect(validate(parse(exampleText(name)))).toBe(true);
  expect(validate({ ...parse(exampleText(EXAMPLE_SCENARIOS[0]!)), colour: 'red' })).toBe(false);
});

it('schema survey prints the JSON Schema of survey files', async () => {
  const { exit, out, err } = await runCommand(workFolder(), ['schema', 'survey']);
  expect({ exit, err }).toEqual({ exit: 0, err: '' });
  const validate = new Ajv2020({ strict: false }).compile(JSON.parse(out));
  const survey = {
    title: 'Inertia',
    scenario: 'belt.yaml',
    ask: 'sweep',
    vary: [{ field: 'load.inertia', from: '1 kg m^2', to: '2 kg m^2', count: 3 }],
  };
  expect(validate(survey)).toBe(true);
  expect(validate({ ...survey, ask: 'sweeps' })).toBe(false);
  expect(validate(parse(exampleText(EXAMPLE_SCENARIOS[0]!)))).toBe(false);
});

it('schema of any other word is refused with the words that would be right', async () => {
  const { exit, out, err } = await runCommand(workFolder(), ['schema', 'surveys']);
  expect({ exit, out }).toEqual({ exit: 1, out: '' });
  expect(err).toContain("'surveys'");
  expect(err).toContain('scenario, survey');
});

it('--version prints the version of package.json', async () => {
  const { version } = JSON.parse(readFileSync(path.join(PROJECT, 'package.json'), 'utf8'));
  expect(await runCommand(workFolder(), ['--version'])).toEqual({ exit: 0, out: `${version}\n`, err: '' });
});

it.each([[['--help']], [['-h']], [['help']]])(
  '%s lists the verbs, the options and the exit codes in 80 columns',
  async (args) => {
    const { exit, out, err } = await runCommand(workFolder(), args);
    expect({ exit, err }).toEqual({ exit: 0, err: '' });
    for (const word of [
      'simulate',
      'check',
      'new',
      'motor',
      'schema',
      '--out',
      '--json',
      '--units',
      '--ascii',
    ])
      expect(out).toContain(word);
    expect(out.slice(out.indexOf('Exit codes:'))).toMatch(/ 0 .*\n.* 1 .*\n.* 2 /u);
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
  },
);

it('help is there for each verb', async () => {
  for (const verb of ['simulate', 'check', 'new', 'motor', 'schema']) {
    const asked = await runCommand(workFolder(), ['help', verb]);
    expect(asked.exit).toBe(0);
    expect(asked.out).toContain(`countertorque ${verb}`);
    expect(await runCommand(workFolder(), [verb, '--help'])).toEqual(asked);
  }
});
