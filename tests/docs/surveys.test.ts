import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { readSurvey } from '../../src/index.ts';
import { ASK_WORDS } from '../../src/survey/spec/surveyInput.ts';
import { PROJECT } from '../support/commandLine.ts';

const FOLDER = path.join(PROJECT, 'examples', 'surveys');
const NAMES = readdirSync(FOLDER).filter((name) => name.endsWith('.yaml'));
const text = (name: string) => readFileSync(path.join(FOLDER, name), 'utf8');

it.each(NAMES)('the survey %s is in order, asks what its name asks and says how to run it', (name) => {
  const { title } = readSurvey(text(name), { fileName: name, scenarioText: text });
  expect(`${title.toLowerCase().replace('?', '').replaceAll(' ', '-')}.yaml`).toBe(name);
  expect(text(name)).toContain(`npm start -- survey examples/surveys/${name}\n`);
});

it('the examples show each thing a survey can ask', () => {
  const asked = NAMES.map((name) => /^ask: ([a-z ]+?)(?: #.*)?$/mu.exec(text(name))![1]!);
  expect(asked.toSorted()).toEqual([...ASK_WORDS].sort());
});
