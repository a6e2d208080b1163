import { expect, it } from 'vitest';
import { runCommand } from '../support/commandLine.ts';
import { shortRun } from '../support/shortRun.ts';
import { filesBelow, workFolder, writeInto } from '../support/workFolder.ts';

const SURVEY = `title: Inertias
scenario: belt.yaml
ask: sweep
vary:
  - { field: load.inertia, from: 0.1 kg m^2, to: 0.3 kg m^2, count: 120 }
  - { field: supply.angle, values: [0 deg, 45 deg, 90 deg, 135 deg, 180 deg] }
`;

function folderWith(survey: string): string {
  const folder = workFolder();
  writeInto(folder, 'belt.yaml', shortRun());
  writeInto(folder, 'my inertias.yaml', survey);
  return folder;
}

it.each([
  ['', []],
  ['simulate', []],
  ['suitability', []],
  ['motor', []],
  ['sheet', []],
  ['compare', ['belt.yaml']],
])('%s of a survey says that it is one, and which command is meant', async (verb, more) => {
  const folder = folderWith(SURVEY);
  const args = [...(verb === '' ? [] : [verb]), 'my inertias.yaml', ...more];
  expect(await runCommand(folder, args)).toEqual({
    exit: 1,
    out: '',
    err: "my inertias.yaml: it is a survey, many runs of a scenario; expected a scenario; this one runs with: npm start -- survey 'my inertias.yaml', and is checked with: npm start -- check 'my inertias.yaml'\n",
  });
});

it('check of a survey says how many runs it has and what they take, and makes none', async () => {
  const folder = folderWith(SURVEY);
  const before = filesBelow(folder);
  // 600 runs at 10 ms, each 250 bytes.
  expect(await runCommand(folder, ['check', 'my inertias.yaml'])).toEqual({
    exit: 0,
    err: '',
    out: 'my inertias.yaml: in order (Inertias)\nA survey of 600 runs of belt.yaml: about 6 s on one core and 150 kB of journal (a rough guess)\n',
  });
  writeInto(
    folder,
    'my inertias.yaml',
    SURVEY.replace('ask: sweep', 'ask: worst case\nmetric: plugPeakCurrent\nseek: largest\nruns: 40')
      .replace(', count: 120', '')
      .replace('values: [0 deg, 45 deg, 90 deg, 135 deg, 180 deg]', 'from: 0 deg, to: 90 deg'),
  );
  expect((await runCommand(folder, ['check', 'my inertias.yaml'])).out).toContain(
    'A survey of 40 runs at most',
  );
  expect(filesBelow(folder)).toEqual(before);
});

it('check of a survey with mistakes lists them, those of its scenario too', async () => {
  const folder = folderWith(SURVEY.replace('load.inertia', 'load.interia').replace('ask: sweep\n', ''));
  const { exit, out, err } = await runCommand(folder, ['check', 'my inertias.yaml']);
  expect({ exit, out }).toEqual({ exit: 1, out: '' });
  expect(err).toMatch(/^my inertias\.yaml:1:1 ask: is missing/u);
  writeInto(folder, 'my inertias.yaml', SURVEY);
  writeInto(folder, 'belt.yaml', shortRun().replace('title:', 'titel:'));
  expect((await runCommand(folder, ['check', 'my inertias.yaml'])).err).toMatch(
    /^belt\.yaml:\d+:\d+ title: is missing/u,
  );
});
