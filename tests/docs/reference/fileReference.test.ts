import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { parseScenario } from '../../../src/estimate/parseScenario.ts';
import { inputJsonSchema } from '../../../src/scenario/inputJsonSchema.ts';
import { scenarioInput } from '../../../src/scenario/scenarioInput.ts';
import { scenarioJsonSchema } from '../../../src/scenario/scenarioJsonSchema.ts';
import { readSurvey } from '../../../src/survey/spec/readSurvey.ts';
import { ASK_WORDS, SURVEY_INPUTS } from '../../../src/survey/spec/surveyInput.ts';
import { PROJECT } from '../../support/commandLine.ts';
import { EXAMPLE_SURVEYS, examplePath, exampleText } from '../../support/examples.ts';
import { expectPage } from '../../support/generatedPages.ts';
import { keysOf, type SchemaKey, type SchemaNode } from '../../support/reference/schemaKeys.ts';
import { scenarioPage, surveyPage } from '../../support/reference/schemaPages.ts';
import { SMALLEST_SCENARIO } from '../../support/reference/smallestScenario.ts';
import { definitionsByPath } from '../../support/reference/zodKeys.ts';

const scenarioSchema: SchemaNode = { ...scenarioJsonSchema() };
const forms = ASK_WORDS.map((ask) => {
  const name = EXAMPLE_SURVEYS.find((survey) => parse(exampleText(survey)).ask === ask)!;
  return { ask, name, schema: { ...inputJsonSchema(SURVEY_INPUTS[ask]) }, file: exampleText(name) };
});

const files = [
  { file: 'a scenario', keys: keysOf(scenarioSchema, ''), definition: scenarioInput },
  ...forms.map(({ ask, schema }) => ({
    file: `a survey, ask: ${ask}`,
    keys: keysOf(schema, ''),
    definition: SURVEY_INPUTS[ask],
  })),
];

describe.each(files)('in $file', ({ keys, definition }) => {
  it('every key has a meaning and says what is written', () => {
    const wordless = ({ meaning, what }: SchemaKey) => !/^\S.*\.$/su.test(meaning) || what === '';
    expect(keys.filter(wordless).map((key) => key.path)).toEqual([]);
  });

  it('every key that is no group shows an example, and the parser takes each for that key', () => {
    const definitions = definitionsByPath(definition);
    const refused = keys.filter(({ path: at, example, isGroup }) => {
      if (isGroup) return false;
      const found = definitions.get(at.replaceAll(/ \([^)]*\)/gu, '')) ?? [];
      return !found.some((one) => one.safeParse(parse(example)).success);
    });
    expect(refused.map(({ path: at, example }) => `${at}: ${example}`)).toEqual([]);
  });

  it('every key of the definition is there', () => {
    const listed = new Set(keys.map((key) => key.path.replaceAll(/ \([^)]*\)/gu, '')));
    // A list of what may also stand alone is listed once.
    const isThere = (at: string) => listed.has(at) || listed.has(at.replace('[]', ''));
    expect([...definitionsByPath(definition).keys()].filter((at) => !isThere(at))).toEqual([]);
  });
});

it('the page of scenario keys is what the definition says, and its scenario is read', () => {
  expect(parseScenario(SMALLEST_SCENARIO).title).toBe('Bobbin winder');
  expectPage('examples/guides/scenario-reference.md', scenarioPage(scenarioSchema, SMALLEST_SCENARIO));
});

it('the page of survey keys is what the definition says, and its surveys are read', () => {
  for (const { name, file } of forms) {
    const folder = path.dirname(path.join(PROJECT, examplePath(name)));
    const scenarioText = (scenario: string) => readFileSync(path.join(folder, scenario), 'utf8');
    expect(readSurvey(file, { fileName: name, scenarioText }).fields.length).toBeGreaterThan(0);
  }
  expectPage('examples/guides/survey-reference.md', surveyPage(forms));
});
