import { expect, it } from 'vitest';
import { readSurvey } from '../../src/index.ts';
import { ASK_WORDS } from '../../src/survey/spec/surveyInput.ts';
import { EXAMPLE_SURVEYS, examplePath, exampleText } from '../support/examples.ts';

const text = (name: string) => exampleText(name.split('/').at(-1)!);

it.each(EXAMPLE_SURVEYS)(
  'the survey %s is in order, asks what its name asks and says how to run it',
  (name) => {
    const { title } = readSurvey(text(name), { fileName: name, scenarioText: text });
    expect(`${title.toLowerCase().replace('?', '').replaceAll(' ', '-')}.yaml`).toBe(name);
    expect(text(name)).toContain(`npm start -- survey ${examplePath(name)}\n`);
  },
);

it('the examples show each thing a survey can ask', () => {
  const asked = EXAMPLE_SURVEYS.map((name) => /^ask: ([a-z ]+?)(?: #.*)?$/mu.exec(text(name))![1]!);
  expect([...new Set(asked)].sort()).toEqual([...ASK_WORDS].sort());
});
