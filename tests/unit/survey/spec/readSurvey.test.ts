import { describe, expect, it } from 'vitest';
import { METRIC_KEYS } from '../../../../src/measure/metric.ts';
import { DEFAULT_METRICS } from '../../../../src/survey/spec/taskOf.ts';
import { codesOf, problemsOf, read, SMALL, surveyOf } from './surveyText.ts';

const YAML = `title: What the instant of closing does
description: Chance.
scenario: smallest.yaml
ask: random
runs: 2000
sequence: pseudo
seed: 7
metrics: [plugMinimumTorque, stopTimeFromTouch]
verdict: yes
vary:
  - { field: supply.angle, distribution: uniform, from: 0 deg, to: 360 deg }
  - { field: starter.closingTime, values: [18 ms, 20 ms, 24 ms] }
`;

const TWO_LISTS = [
  { field: 'load.inertia', from: '0.05 kg m^2', to: '0.1 kg m^2', count: 3 },
  { field: 'starter.closingTime', values: ['18 ms', '20 ms'] },
];

const worst = (changes: Readonly<Record<string, unknown>> = {}) =>
  surveyOf({
    ask: 'worst case',
    metric: 'plugMaximumTorque',
    seek: 'largest magnitude',
    vary: [{ field: 'supply.angle', from: '0 deg', to: '360 deg' }],
    ...changes,
  });

describe('what a survey says', () => {
  it('is read with all it states, and the text of its scenario', () => {
    expect(read(YAML)).toEqual({
      title: 'What the instant of closing does',
      description: 'Chance.',
      base: { fileName: 'smallest.yaml', text: SMALL },
      fields: [
        { path: 'supply.angle', unit: 'deg', spread: { kind: 'uniform', from: 0, to: 360 } },
        { path: 'starter.closingTime', unit: 'ms', spread: { kind: 'values', values: [18, 20, 24] } },
      ],
      metrics: ['plugMinimumTorque', 'stopTimeFromTouch'],
      verdict: true,
      seed: 7,
      task: { kind: 'random', runs: 2000, sequence: 'pseudo' },
    });
  });

  it('has defaults: seed 1, an even sequence, no verdict, five metrics of the plug', () => {
    expect(read(surveyOf())).toMatchObject({
      description: '',
      seed: 1,
      verdict: false,
      metrics: DEFAULT_METRICS,
      task: { kind: 'random', runs: 100, sequence: 'quasi' },
    });
    expect(METRIC_KEYS).toEqual(expect.arrayContaining([...DEFAULT_METRICS]));
  });

  it('can ask each of the five questions', () => {
    const sweep = surveyOf({ ask: 'sweep', runs: undefined, vary: TWO_LISTS });
    expect(read(sweep)).toMatchObject({ task: { kind: 'sweep' }, verdict: false });
    const map = surveyOf({ ask: 'limit map', runs: undefined, vary: TWO_LISTS });
    expect(read(map)).toMatchObject({ task: { kind: 'limitMap' }, verdict: true });
    const task = { kind: 'worst', metric: 'plugMaximumTorque', seek: 'largestMagnitude', runs: 100 };
    expect(read(worst()).task).toEqual(task);
    const sensitivity = surveyOf({ ask: 'sensitivity', runs: undefined, samples: 512 });
    expect(read(sensitivity).task).toEqual({ kind: 'sensitivity', samples: 512, sequence: 'quasi' });
  });

  it('takes down the metric whose extreme is sought, once', () => {
    expect(read(worst()).metrics).toEqual([...DEFAULT_METRICS, 'plugMaximumTorque']);
    expect(read(worst({ metrics: ['plugMaximumTorque'] })).metrics).toEqual(['plugMaximumTorque']);
  });
});

describe('a survey is refused', () => {
  it.each([
    ['a key that no survey has', { seeed: 1 }, ['seeed: unknownKey']],
    ['a key of another question', { samples: 3 }, ['samples: unknownKey']],
    ['a metric that does not exist', { metrics: ['plugMinimumTorqe'] }, ['metrics.0: unknownWord']],
    ['a metric twice', { metrics: ['startTime', 'startTime'] }, ['metrics.1: conflict']],
    ['no metrics', { metrics: [] }, ['metrics: outOfRange']],
    ['nothing varied', { vary: [] }, ['vary: outOfRange']],
    ['a group in place of a list of fields', { vary: {} }, ['vary: wrongType']],
    ['text in place of a list of fields', { vary: 'supply.angle' }, ['vary: wrongType']],
    ['text in place of a list of metrics', { metrics: 'startTime' }, ['metrics: wrongType']],
    ['no runs', { runs: 0 }, ['runs: outOfRange']],
    ['a negative number of runs', { runs: -5 }, ['runs: outOfRange']],
    ['half a run', { runs: 2.5 }, ['runs: outOfRange']],
    ['text in place of runs', { runs: '100' }, ['runs: wrongType']],
    ['runs left out', { runs: undefined }, ['runs: missingKey']],
    ['a negative seed', { seed: -1 }, ['seed: outOfRange']],
    ['a seed of more than 32 bits', { seed: 4294967296 }, ['seed: outOfRange']],
    ['an unknown sequence', { sequence: 'random' }, ['sequence: unknownWord']],
    ['an unknown question', { ask: 'rando' }, ['ask: unknownWord']],
    ['no question', { ask: undefined }, ['ask: missingKey']],
    [
      'a limit map without verdicts',
      { ask: 'limit map', runs: undefined, verdict: false, vary: TWO_LISTS },
      ['verdict: conflict'],
    ],
    [
      'a limit map of one field',
      { ask: 'limit map', runs: undefined, vary: TWO_LISTS.slice(1) },
      ['vary: outOfRange'],
    ],
    ['one sample', { ask: 'sensitivity', runs: undefined, samples: 1 }, ['samples: outOfRange']],
  ])('with %s', (_, changes, codes) => {
    expect(codesOf(surveyOf(changes))).toEqual(codes);
  });

  it('with an unknown metric or direction of a worst case', () => {
    expect(codesOf(worst({ metric: 'plugMaximumTorqu', seek: 'larger' }))).toEqual([
      'metric: unknownWord',
      'seek: unknownWord',
    ]);
  });

  it('with a limit map of three fields', () => {
    const three = [...TWO_LISTS, { field: 'supply.angle', values: ['0 deg', '5 deg'] }];
    expect(codesOf(surveyOf({ ask: 'limit map', runs: undefined, vary: three }))).toEqual([
      'vary: outOfRange',
    ]);
  });

  it('with more than 30 fields, and only 30 are looked at', () => {
    const vary = Array.from({ length: 31 }, (_, at) => ({
      field: `supply.nothing${at}`,
      distribution: 'uniform',
      from: 1,
      to: 2,
    }));
    const codes = codesOf(surveyOf({ vary }));
    expect(codes).toContain('vary: outOfRange');
    expect(codes).toHaveLength(31);
    expect(codesOf(surveyOf({ vary: vary.slice(1) }))).toHaveLength(30);
  });

  it('with the same field twice', () => {
    const field = { field: 'supply.angle', values: ['0 deg', '9 deg'] };
    expect(codesOf(surveyOf({ vary: [field, field] }))).toEqual(['vary.1.field: conflict']);
  });

  it('with the word that was probably meant', () => {
    const [key] = problemsOf(surveyOf({ seeed: 1 }));
    expect(key!.expected).toMatch(/^`seed` \(did you mean that\?\)/u);
    const [other] = problemsOf(surveyOf({ samples: 3 }));
    expect(other).toMatchObject({ message: 'has no meaning with `ask: random`' });
    expect(other!.expected).toContain('`ask: sensitivity`');
    const [metric] = problemsOf(surveyOf({ metrics: ['plugMinimumTorqe'] }));
    expect(metric!.expected).toMatch(/^`plugMinimumTorque`/u);
  });
});

describe('more runs than anybody would wait for', () => {
  it('are refused with what they would take: a billion at 10 ms are 116 days', () => {
    const [problem] = problemsOf(surveyOf({ runs: 1e9 }));
    expect(problem).toMatchObject({ path: 'runs', code: 'outOfRange', found: '1000000000' });
    expect(problem!.message).toContain('120 days on one core and 250 GB');
    expect(problem!.expected).toBe('a whole number from 1 to 10000000');
    expect(codesOf(surveyOf({ runs: 1e7 }))).toEqual([]);
    expect(codesOf(surveyOf({ runs: 1e7 + 1 }))).toEqual(['runs: outOfRange']);
  });

  it('are refused where a sweep multiplies to them', () => {
    const grid = (field: string, unit: string, count: number) => ({
      field,
      from: `1 ${unit}`,
      to: `2 ${unit}`,
      count,
    });
    const vary = (count: number) => [
      grid('load.inertia', 'kg m^2', 10_000),
      grid('supply.angle', 'deg', count),
    ];
    expect(codesOf(surveyOf({ ask: 'sweep', runs: undefined, vary: vary(1000) }))).toEqual([]);
    expect(codesOf(surveyOf({ ask: 'sweep', runs: undefined, vary: vary(1001) }))).toEqual([
      'vary: outOfRange',
    ]);
  });

  it('are refused where samples cost as many runs as there are fields and two', () => {
    const sensitivity = (samples: number) => surveyOf({ ask: 'sensitivity', runs: undefined, samples });
    expect(codesOf(sensitivity(3_333_333))).toEqual([]);
    const [problem] = problemsOf(sensitivity(3_333_334));
    expect(problem).toMatchObject({ path: 'samples', code: 'outOfRange' });
    expect(problem!.expected).toContain('to 3333333');
  });
});

describe('problems', () => {
  it('are all told at once, each with its file, line, column, what was found and what would be right', () => {
    const text = YAML.replace('seed: 7', 'seed: -7')
      .replace('runs: 2000', 'runs: 0')
      .replace('18 ms', '18 m')
      .replace('to: 360 deg', 'to: 36000 deg');
    expect(
      problemsOf(text).map(({ file, line, column, path, found }) => [file, line, column, path, found]),
    ).toEqual([
      ['instants.yaml', 5, 7, 'runs', '0'],
      ['instants.yaml', 7, 7, 'seed', '-7'],
      ['instants.yaml', 11, 68, 'vary.0.to', '"36000 deg"'],
      ['instants.yaml', 12, 50, 'vary.1.values.1', '"20 ms"'],
      ['instants.yaml', 12, 57, 'vary.1.values.2', '"24 ms"'],
    ]);
  });

  it('of the scenario follow with its own file name and lines', () => {
    const problems = problemsOf(
      YAML.replace('seed: 7', 'seed: -7'),
      'title: x\nsupply: { lineVoltage: 400 }\n',
    );
    expect(problems[0]).toMatchObject({ file: 'instants.yaml', path: 'seed' });
    const voltage = problems.find(({ path }) => path === 'supply.lineVoltage');
    expect(voltage).toMatchObject({ file: 'smallest.yaml', line: 2, column: 24, code: 'missingUnit' });
  });

  it('of a scenario that cannot be read stand at its name', () => {
    const [problem] = problemsOf(YAML.replace('smallest', 'nothing-of-that-name'));
    expect(problem).toMatchObject({ path: 'scenario', line: 3, column: 11, file: 'instants.yaml' });
    expect(problem!.message).toMatch(/no such file/u);
  });
});

describe('a hostile file is refused', () => {
  it.each([
    ['of great size', `title: ${'x'.repeat(300_000)}`, 'tooLarge'],
    ['of great depth', '['.repeat(5000), 'tooDeep'],
    ['with an anchor', 'title: &x 1\nmetrics: *x', 'yamlFeature'],
    ['with a tag', 'title: !!js/function x', 'yamlFeature'],
    ['with two documents', `${YAML}---\n${YAML}`, 'multipleDocuments'],
    ['with a key twice', `${YAML}seed: 8\n`, 'duplicateKey'],
    ['with nothing in it', '', 'empty'],
    ['that is a list', '[]', 'wrongType'],
    ['that is a word', 'survey', 'wrongType'],
    ['with bytes of no text', 'title: \u0000', 'notText'],
    ['with a key that means the prototype', `${YAML}__proto__: { seed: 3 }\n`, 'unknownKey'],
  ])('%s', (_, text, code) => {
    const problems = problemsOf(text);
    expect(problems.map((problem) => problem.code)).toContain(code);
    for (const { expected } of problems)
      expect(expected).not.toMatch(/scenario with|a scenario of|one scenario/u);
  });

  it('with numbers that are none', () => {
    const text = (key: string, value: string) =>
      YAML.replace(new RegExp(`${key}: \\d+`, 'u'), `${key}: ${value}`);
    for (const value of ['.nan', '.inf', '-.inf', '1e999'])
      expect(codesOf(text('runs', value))).toEqual(['runs: notANumber']);
    expect(codesOf(text('seed', '.nan'))).toEqual(['seed: notANumber']);
  });

  it('with hundreds of fields, of which few are looked at', () => {
    const one = '  - { field: load.inertia, values: [5 ohm] }\n';
    const codes = codesOf(YAML.slice(0, YAML.indexOf('  - {')) + one.repeat(300));
    expect(codes.slice(0, 2)).toEqual(['vary: outOfRange', 'vary.0.values.0: wrongUnit']);
    // 29 of the 30 that are looked at stand twice.
    expect(codes).toHaveLength(31);
  });
});
