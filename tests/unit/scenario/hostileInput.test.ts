import { expect, it } from 'vitest';
import { maxCharacters, maxProblems, maxTokens } from '../../../src/scenario/limits.ts';
import { formatProblem } from '../../../src/scenario/problem.ts';
import { nameplateScenario, PLATE } from './everyKey.ts';
import { codesOf, minimalScenario, problemsOf } from './minimalScenario.ts';

it('fifty megabytes are refused by their length, before anything is parsed', () => {
  // Were it parsed, the first character would be reported instead.
  expect(codesOf('\u0000'.repeat(5e7))).toEqual(['tooLarge']);
  expect(codesOf(`[${' '.repeat(maxCharacters)}`)).toEqual(['tooLarge']);
});

it('as many pieces of syntax as fit into the length are refused at a fixed number of them', () => {
  const [problem] = problemsOf(`[${',\n'.repeat(maxTokens)}`);
  expect(problem?.code).toBe('tooLarge');
  // Every comma and line end is a piece: the walk ended near the limit, not at the end of the text.
  expect(problem?.line).toBeLessThan(maxTokens / 2 + 10);
});

it.each([
  ['lists', '['.repeat(100_000)],
  ['groups', '{a: '.repeat(50_000)],
  ['lists whose brackets seem to close inside quotes', '["]",'.repeat(50_000)],
  ['list dashes', '- '.repeat(100_000)],
  ['question marks', '? '.repeat(100_000)],
  ['keys on one line', 'a: '.repeat(80_000)],
  ['ever deeper lines', Array.from({ length: 700 }, (_, i) => `${' '.repeat(i)}a:`).join('\n')],
])('deep nesting by %s is refused within the first hundred characters or lines', (_, source) => {
  const [problem, ...others] = problemsOf(source);
  expect(problem?.code).toBe('tooDeep');
  expect(others).toEqual([]);
  expect(problem?.column ?? 0).toBeLessThan(200);
  expect(problem?.line ?? 0).toBeLessThan(100);
});

it('deep or endless objects are refused without a stack overflow', () => {
  let deep: unknown = 1;
  for (let i = 0; i < 100_000; i++) deep = [deep];
  expect(codesOf(deep)).toEqual(['tooDeep']);
  const circle: { self?: unknown } = {};
  circle.self = circle;
  expect(codesOf(circle)).toEqual(['tooDeep']);
  expect(codesOf(Array(100_000).fill(0))).toEqual(['tooLarge']);
});

it('an alias bomb is refused at its anchors and never expanded', () => {
  const levels = Array.from({ length: 9 }, (_, i) => {
    const below =
      i === 0
        ? '"x"'
        : Array(9)
            .fill(`*a${i - 1}`)
            .join(', ');
    return `a${i}: &a${i} [${below}]`;
  });
  const problems = problemsOf(levels.join('\n'));
  expect(new Set(problems.map(({ code }) => code))).toEqual(new Set(['yamlFeature']));
  expect(problems[0]).toMatchObject({ line: 1, column: 9 });
});

it('tags and other versions of YAML are refused', () => {
  expect(codesOf('title: !secret x')).toEqual(['yamlFeature']);
  expect(codesOf('title: !!str x')).toEqual(['yamlFeature']);
  expect(codesOf('%YAML 1.1\n---\ntitle: x')).toEqual(['yamlFeature']);
});

it('several documents in one file are refused at the second', () => {
  expect(problemsOf('title: a\n---\ntitle: b')[0]).toMatchObject({ code: 'multipleDocuments', line: 2 });
});

it('keys that name parts of every object are unknown keys like others', () => {
  const json = JSON.stringify(minimalScenario()).replace(
    '{',
    '{"__proto__": {"polluted": 1}, "constructor": 1,',
  );
  const expected = ['unknownKey __proto__', 'unknownKey constructor'];
  expect(codesOf(json)).toEqual(expected);
  expect(codesOf(JSON.parse(json))).toEqual(expected);
  expect(Object.hasOwn(Object.prototype, 'polluted')).toBe(false);
});

it('bytes that are no text are refused where they stand', () => {
  expect(problemsOf('title: a\nb: \u0000')[0]).toMatchObject({ code: 'notText', line: 2, column: 4 });
  // What a decoder puts in place of bytes that are not UTF-8.
  expect(codesOf('title: \uFFFD')).toEqual(['notText']);
});

it('control characters that escapes bring in are refused, and messages never repeat them', () => {
  const steering = String.fromCharCode(27);
  expect(codesOf(minimalScenario({ title: `red ${steering}[31m` }))).toEqual(['notText title']);
  expect(codesOf(minimalScenario({ title: 'two\nlines' }))).toEqual(['notText title']);
  expect(codesOf(minimalScenario({ description: `red ${steering}[31m` }))).toEqual(['notText description']);
  expect(() => codesOf(minimalScenario({ description: 'two\nlines' }))).toThrow('accepted');
  for (const source of ['"red \\e[31m": 1', 'load: { torque: "5 lb \\e[31m ft", inertia: "5 \\e[31m" }']) {
    expect(problemsOf(source).map(formatProblem).join('')).not.toContain(steering);
  }
});

it.each([
  ['nothing', ''],
  ['only a comment', '# nothing here\n'],
  ['null', 'null'],
])('a file with %s is called empty', (_, source) => {
  expect(codesOf(source)).toEqual(['empty']);
});

it('a tab as indentation is named at its line', () => {
  expect(problemsOf('supply:\n\tfrequency: 60 Hz')[0]).toMatchObject({ code: 'syntax', line: 2 });
});

it.each([[42], [null], [undefined], ['just words'], ['[1, 2]']])(
  '%j in place of a scenario is refused',
  (source) => {
    expect(problemsOf(source)).toHaveLength(1);
  },
);

it('NaN and infinity in YAML spelling are refused where a number is expected', () => {
  const yaml = (value: string) =>
    JSON.stringify(minimalScenario({ machine: { poles: 'HERE' } })).replace('"HERE"', value);
  expect(codesOf(yaml('.nan'))).toEqual(['notANumber machine.poles']);
  expect(codesOf(yaml('-.inf'))).toEqual(['notANumber machine.poles']);
  expect(codesOf(yaml('1e999'))).toEqual(['notANumber machine.poles']);
});

it('a file with thousands of problems lists the first hundred and the number of the others', () => {
  const keys = Array.from({ length: 2000 }, (_, i) => `k${i}: 1`).join('\n');
  const problems = problemsOf(keys);
  expect(problems).toHaveLength(maxProblems + 1);
  // Five missing sections or keys (title, supply, machine, load, actions) and the 2000 unknown ones.
  expect(problems.at(-1)?.message).toBe(`${2005 - maxProblems} further problems are not listed`);
});

it.each<[string, string, unknown, string]>([
  ['supply', 'cable', [], 'wrongType supply.cable'],
  ['supply', 'transformer', null, 'missingKey supply.transformer'],
  ['machine', 'saturation', 'typical', 'wrongType machine.saturation'],
  ['machine', 'ironLoss', {}, 'missingKey machine.ironLoss.resistance'],
  ['machine', 'ironLoss', [], 'wrongType machine.ironLoss'],
  ['machine', 'temperature', true, 'wrongType machine.temperature'],
  ['machine', 'rotorResistors', 5, 'wrongType machine.rotorResistors'],
  ['load', 'gear', 'worm', 'wrongType load.gear'],
  ['load', 'coupling', Number.NaN, 'wrongType load.coupling'],
  ['starter', 'faults', {}, 'wrongType starter.faults'],
  ['starter', 'lineResistors', '1 ohm', 'wrongType starter.lineResistors'],
])('%s.%s as something else entirely is refused by its type', (section, key, value, expected) => {
  expect(codesOf(minimalScenario({ [section]: { [key]: value } }))).toContain(expected);
});

it('a nameplate or tests of another type are refused without a word about the circuit they stand for', () => {
  for (const key of ['nameplate', 'tests'] as const)
    expect(
      codesOf(
        nameplateScenario({}, { nameplate: undefined, [key]: 'unknown', poles: 4, rated: { power: '1 kW' } }),
      ),
    ).toContain(`wrongType machine.${key}`);
  expect(codesOf(nameplateScenario({}, { nameplate: 'unknown', poles: 4 }))).toEqual([
    'wrongType machine.nameplate',
  ]);
});

it('keys that name parts of every object are unknown inside elements too', () => {
  const json = JSON.stringify(nameplateScenario(PLATE)).replace(
    '"power":',
    '"__proto__": {"power": 1}, "power":',
  );
  expect(codesOf(json)).toEqual(['unknownKey machine.nameplate.__proto__']);
  const cable = JSON.parse(
    '{"__proto__": {"resistance": "1 ohm"}, "length": "80 m", "resistance": "1 ohm/km"}',
  );
  expect(codesOf(minimalScenario({ supply: { cable } }))).toEqual(['unknownKey supply.cable.__proto__']);
});

it('long lists of points, steps and faults are refused by their length', () => {
  const points = Array.from({ length: 1001 }, (_, i) => ({ speed: `${i * 10} rpm`, torque: '1 N m' }));
  expect(codesOf(minimalScenario({ load: { torque: { kind: 'table', points } } }))).toEqual([
    'outOfRange load.torque.points',
  ]);
  const main = Array.from({ length: 101 }, (_, i) => ({ voltage: `${i + 1} V`, current: `${i + 1} A` }));
  expect(codesOf(minimalScenario({ machine: { saturation: { main } } }))).toEqual([
    'outOfRange machine.saturation.main',
  ]);
  const starting = Array(51).fill({ resistance: '1 ohm', duration: '1 s' });
  expect(codesOf(minimalScenario({ machine: { rotorResistors: { starting } } }))).toEqual([
    'outOfRange machine.rotorResistors.starting',
  ]);
  const faults = Array.from({ length: 21 }, () => ({ kind: 'lost phase', phase: 'A', at: '1 s' }));
  expect(codesOf(minimalScenario({ starter: { faults } }))).toContain('outOfRange starter.faults');
});

it.each(['.nan', '.inf', '1e999', '"1e999 %"', '"NaN %"'])('%s as a ratio is no number', (value) => {
  const yaml = JSON.stringify(nameplateScenario({ ...PLATE, efficiency: 'HERE' })).replace('"HERE"', value);
  expect(codesOf(yaml)).toEqual(['notANumber machine.nameplate.efficiency']);
});
