import { describe, expect, it } from 'vitest';
import { circuitEstimator } from '../../../../src/estimate/estimator.ts';
import { readScenario } from '../../../../src/scenario/readScenario.ts';
import { readYaml } from '../../../../src/scenario/readYaml.ts';
import type { Scenario } from '../../../../src/scenario/scenario.ts';
import { ScenarioError } from '../../../../src/scenario/scenarioError.ts';
import { scenarioOfRun } from '../../../../src/survey/runs/scenarioOfRun.ts';
import { changesOf, withValues } from '../../../../src/survey/runs/withValues.ts';
import { rememberingEstimator } from '../../../../src/survey/spec/rememberingEstimator.ts';
import type { VariedField } from '../../../../src/survey/spec/survey.ts';
import { EXAMPLE_SCENARIOS, exampleText } from '../../../support/examples.ts';
import { numbersIn, surveyOf } from './numberFields.ts';

const estimator = rememberingEstimator(circuitEstimator);

/** The scenario, or the codes of what is wrong with it. */
function parsed(source: unknown): Scenario | string {
  try {
    return readScenario(source, {}, estimator).scenario;
  } catch (error) {
    if (error instanceof ScenarioError)
      return error.problems.map(({ path, code }) => `${path} ${code}`).join();
    throw error;
  }
}

/** A number near another, with all its digits; whole numbers stay whole. */
const near = (number: number) =>
  Number.isInteger(number) && number < 100 ? number + 2 : number * (1 + 1 / 97);

const lines = (text: string) => text.split('\n');

describe('the scenario of one run', () => {
  it.each(EXAMPLE_SCENARIOS)(
    'of %s is the same, to the last bit, as that of its data, whichever number is varied',
    (name) => {
      const text = exampleText(name);
      const data = readYaml(text).data!.value;
      const numbers = numbersIn(data);
      expect(numbers.length).toBeGreaterThan(15);
      for (const { field, number } of numbers) {
        const survey = surveyOf(text, [field]);
        const written = scenarioOfRun(survey, [near(number)]);
        // One line is another; comments and layout are as they were.
        const changed = lines(written).filter((line, at) => line !== lines(text)[at]);
        expect(changed).toHaveLength(1);
        expect(lines(written)).toHaveLength(lines(text).length);
        expect(readYaml(written).data!.value).toEqual(withValues(data, changesOf([field], [near(number)])));
      }
      // All at once, of machines whose circuit need not be estimated anew.
      const others = numbers.filter(({ field }) => !field.path.startsWith('machine.nameplate'));
      const fields = others.map(({ field }) => field);
      const values = others.map(({ field, number }) => (field.unit === '' ? number : number * (1 + 1e-9)));
      const written = scenarioOfRun(surveyOf(text, fields), values);
      expect(parsed(written)).toHaveProperty('machine');
      expect(parsed(written)).toEqual(parsed(withValues(data, changesOf(fields, values))));
    },
  );

  const field = (path: string, unit: string): VariedField => ({
    path,
    unit,
    spread: { kind: 'values', values: [1] },
  });
  const inertia = field('load.inertia', 'kg m^2');

  it('keeps every other character: comments, blanks, line ends, a byte order mark', () => {
    const text = '\uFEFFtitle: "A"\r\nload:   { inertia: \'0.2 kg m^2\' , torque: none } # c\r\n\r\n# end';
    const written = scenarioOfRun(surveyOf(text, [inertia]), [0.1 + 0.2]);
    expect(written).toBe(text.replace("'0.2 kg m^2'", '0.30000000000000004 kg m^2'));
  });

  it('adds a key that is not written, and the groups around it', () => {
    const text = 'title: A\nload:\n  inertia: 1 kg m^2 # one\n# end\n';
    expect(scenarioOfRun(surveyOf(text, [field('load.gear.efficiency', '%')]), [93.5])).toBe(
      'title: A\nload:\n  inertia: 1 kg m^2 # one\n  gear: { efficiency: 93.5 % }\n# end\n',
    );
    expect(scenarioOfRun(surveyOf(text, [field('supply.xOverR', '')]), [1e-7])).toContain(
      'supply: { xOverR: 1e-7 }',
    );
  });

  it('stays JSON where it is JSON', () => {
    const text = '{"title": "A", "load": {"inertia": "1 kg m^2"}}';
    expect(scenarioOfRun(surveyOf(text, [inertia]), [-0])).toBe(text.replace('1 kg', '0 kg'));
  });

  it('comes as JSON where the layout is one that cannot be changed in place', () => {
    const text = 'title: A\nload:\n  inertia: >-\n    1 kg m^2\n  torque: none\n';
    const written = scenarioOfRun(surveyOf(text, [inertia]), [2]);
    expect(JSON.parse(written)).toEqual({ title: 'A', load: { inertia: '2 kg m^2', torque: 'none' } });
  });
});
