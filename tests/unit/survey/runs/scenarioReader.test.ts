import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { circuitEstimator } from '../../../../src/estimate/estimator.ts';
import { parseScenario } from '../../../../src/estimate/parseScenario.ts';
import { readScenario } from '../../../../src/scenario/readScenario.ts';
import { readYaml } from '../../../../src/scenario/readYaml.ts';
import { ScenarioError } from '../../../../src/scenario/scenarioError.ts';
import { inputPlaces } from '../../../../src/survey/runs/inputPlaces.ts';
import { scenarioOfRun } from '../../../../src/survey/runs/scenarioOfRun.ts';
import { scenarioReader } from '../../../../src/survey/runs/scenarioReader.ts';
import { changesOf, withValues } from '../../../../src/survey/runs/withValues.ts';
import { rememberingEstimator } from '../../../../src/survey/spec/rememberingEstimator.ts';
import type { VariedField } from '../../../../src/survey/spec/survey.ts';
import { EXAMPLE_SCENARIOS, exampleText } from '../../../support/examples.ts';
import { between, numbersIn, surveyOf } from './numberFields.ts';

const dataOf = (text: string): unknown => readYaml(text).data!.value;
const estimator = rememberingEstimator(circuitEstimator);

/** Fields of the examples whose value cannot simply be put in place of another: whole numbers and numbers of a list. */
const READ_ANEW = /poles$|class$|category$/u;

/** As a share of a number, how far its field goes either way: far less than any rule between keys leaves. */
const REACH = 1e-3;

/** The field around the number that stands in the scenario. */
function around({ path, unit }: VariedField, number: number): VariedField {
  const reach = number === 0 ? REACH : Math.abs(number) * REACH;
  return between(path, unit, number === 0 ? 0 : number - reach, number + reach);
}

/** A value in the field with all its digits. */
function inside({ spread }: VariedField): number {
  if (spread.kind !== 'uniform') throw new Error('not of this test');
  return spread.from + 0.7310585786300049 * (spread.to - spread.from);
}

/**
 * Whether each run reads everything: what is put in place of a number leaves all else, such as the machine, the very same object, and
 * reading anew makes another.
 */
function isReadAnew(text: string, fields: readonly VariedField[], values: readonly number[]): boolean {
  const others = fields.flatMap((field, at) => (field.path.startsWith('machine.') ? [] : [{ field, at }]));
  const rest = others.map(({ field }) => field);
  const read = scenarioReader(surveyOf(text, rest));
  const own = others.map(({ at }) => values[at]!);
  const [first, second] = [read(own), read(own)];
  return first.scenario.machine !== second.scenario.machine;
}

/** What a reader or `parseScenario` says is wrong. */
function complaint(read: () => unknown): string {
  try {
    read();
  } catch (error) {
    if (error instanceof ScenarioError) return error.message;
    throw error;
  }
  throw new Error('nothing was refused');
}

describe('the scenarios of the runs', () => {
  it.each(EXAMPLE_SCENARIOS)(
    'of %s are those that the whole way of reading gives, to the last bit, whichever number is varied',
    (name) => {
      const text = exampleText(name);
      const data = dataOf(text);
      // An estimate takes as long as a hundred of these readings; nameplates have their own test below.
      const estimated = text.includes('nameplate:')
        ? /^machine\.nameplate|^supply\.(?:lineVoltage|frequency)/u
        : /^$/u;
      const numbers = numbersIn(data).filter(({ field }) => !estimated.test(field.path));
      const fast = numbers
        .filter(({ field }) => !READ_ANEW.test(field.path))
        .map(({ field, number }) => ({ field: around(field, number), number }));
      expect(fast.length).toBeGreaterThan(15);
      const fields = fast.map(({ field }) => field);
      const standing = fast.map(({ number }) => number);
      const read = scenarioReader(surveyOf(text, fields));
      const first = read(standing).scenario;
      expect(first).toEqual(readScenario(data, {}, estimator).scenario);
      for (const [at, field] of fields.entries()) {
        const value = inside(field);
        const whole = readScenario(withValues(data, changesOf([field], [value])), {}, estimator);
        const quick = read(standing.with(at, value));
        expect(quick, field.path).toEqual({
          scenario: whole.scenario,
          cageIsFitted: whole.estimation !== null,
        });
        expect(quick.scenario, field.path).not.toEqual(first);
      }
      expect(isReadAnew(text, fields, standing)).toBe(false);
    },
  );

  it.each(EXAMPLE_SCENARIOS)('of %s are those of the texts that scenarioOfRun gives', (name) => {
    const text = exampleText(name);
    const some = numbersIn(dataOf(text)).filter(
      ({ field }, at) => at % 7 === 3 && !/nameplate/u.test(field.path) && !READ_ANEW.test(field.path),
    );
    const survey = surveyOf(
      text,
      some.map(({ field, number }) => around(field, number)),
    );
    const values = survey.fields.map(inside);
    expect(some.length).toBeGreaterThan(2);
    expect(scenarioReader(survey)(values).scenario).toEqual(
      readScenario(scenarioOfRun(survey, values), {}, estimator).scenario,
    );
  });

  it('of a nameplate are estimated for each machine, and not again for the same', () => {
    const text = exampleText('what-if-only-the-nameplate-is-known.yaml');
    const plate = numbersIn(dataOf(text)).filter(
      ({ field }) => field.path.startsWith('machine.nameplate') && !READ_ANEW.test(field.path),
    );
    expect(plate.length).toBeGreaterThan(3);
    const inertia = between('load.inertia', 'kg m^2', 0.01, 10);
    const fields = [...plate.map(({ field, number }) => around(field, number)), inertia];
    const survey = surveyOf(text, fields);
    const estimates = vi.spyOn(circuitEstimator, 'fromNameplate');
    onTestFinished(() => estimates.mockRestore());
    const read = scenarioReader(survey);
    const values = fields.map(inside);
    const other = values.with(-1, 0.5);
    read(values);
    read(other);
    // That of the file and that of the values.
    expect(estimates).toHaveBeenCalledTimes(2);
    const { scenario, cageIsFitted } = read(values);
    expect(cageIsFitted).toBe(true);
    expect(scenario).toEqual(parseScenario(scenarioOfRun(survey, values)));
    expect(read(other).scenario.machine).toEqual(scenario.machine);
    expect(read(other).scenario.load).not.toEqual(scenario.load);
    const plain = plate.map(({ number }) => number);
    expect(read([...plain, 0.5]).scenario.machine).not.toEqual(scenario.machine);
  });
});

const text = exampleText('may-this-belt-be-plugged.yaml');
const expectAsWhole = (source: string, fields: readonly VariedField[], values: readonly number[]) => {
  const survey = surveyOf(source, fields);
  const { scenario } = scenarioReader(survey)(values);
  expect(scenario).toEqual(parseScenario(scenarioOfRun(survey, values)));
  return scenario;
};

describe('a value', () => {
  it('that stands in no line of the file takes the place of the default', () => {
    const source = text.replace(/^ {2}angle: .*\n/mu, '');
    expect(source).not.toContain('angle: 30 deg');
    const angle = between('supply.angle', 'deg', 0, 360);
    expect(inputPlaces(dataOf(source), [angle])).not.toBeNull();
    expect(expectAsWhole(source, [angle], [123.4]).supply.angle).not.toBe(0);
    // A group that does not stand there either.
    const tolerance = between('solver.relativeTolerance', '', 1e-9, 1e-7);
    expect(inputPlaces(dataOf(text), [tolerance])).not.toBeNull();
    expect(expectAsWhole(text, [tolerance], [3e-8]).solver.relativeTolerance).toBe(3e-8);
  });

  it.each([
    ['load.inertia', 'lb ft^2', 1, 3, 1.2345],
    ['supply.angle', 'rad', 0, 6, 1 / 3],
    ['starter.zeroSpeedSwitch.dropOutSpeed', 'rad/s', 4, 8, 2 * Math.PI],
    ['machine.rated.power', 'hp', 9, 11, 10.1],
    ['thermal.ambient', 'degF', 90, 120, 113.3],
    ['load.torque.0.torque', 'lbf ft', 6, 9, 8.7],
    ['load.gear.efficiency', '%', 90, 99, 93.7],
    ['machine.statorLeakage', 'mH', 3, 5, 4.1],
    ['limits.reverseCreep', 'deg', 20, 40, 31.7],
  ])('of %s may stand in another unit than in the file: %s', (path, unit, from, to, value) => {
    const source = path.includes('gear')
      ? text.replace('load:\n', 'load:\n  gear: { ratio: 2, efficiency: 95 % }\n')
      : text;
    const field = between(path, unit, from, to);
    expect(inputPlaces(dataOf(source), [field])).not.toBeNull();
    expectAsWhole(source, [field], [value]);
  });

  it('outside its field is read as the file would be, and refused in the same words', () => {
    const inertia = between('load.inertia', 'kg m^2', 0.01, 1);
    expectAsWhole(text, [inertia], [2]);
    const survey = surveyOf(text, [inertia]);
    const data = withValues(dataOf(text), changesOf([inertia], [-1]));
    const said = complaint(() => scenarioReader(survey)([-1]));
    expect(said).toBe(complaint(() => parseScenario(data, { fileName: 'base.yaml' })));
    expect(said).toMatch(/^base\.yaml load\.inertia/u);
  });

  it('that is a whole number is read anew each time', () => {
    const poles: VariedField = {
      path: 'machine.poles',
      unit: '',
      spread: { kind: 'values', values: [2, 4, 6] },
    };
    const source = text.replace(/^ {2}rated: .*\n/mu, '  rated: { current: 14.6 A, speed: 950 rpm }\n');
    expect(inputPlaces(dataOf(source), [poles])).toBeNull();
    expect(expectAsWhole(source, [poles], [6]).machine.polePairs).toBe(3);
  });
});

describe('values that contradict each other', () => {
  const fields = [
    between('starter.zeroSpeedSwitch.dropOutSpeed', 'rpm', 40, 110),
    between('starter.zeroSpeedSwitch.pickUpSpeed', 'rpm', 65, 200),
  ];

  it('are refused in the words that reading the whole file has for them, whatever was read before', () => {
    const survey = surveyOf(text, fields);
    expect(inputPlaces(dataOf(text), fields)).not.toBeNull();
    const read = scenarioReader(survey);
    const data = withValues(dataOf(text), changesOf(fields, [100, 70]));
    const wanted = complaint(() => parseScenario(data, { fileName: 'base.yaml' }));
    expect(wanted).toContain('pickUpSpeed');
    expect(isReadAnew(text, fields, [60, 120])).toBe(false);
    for (const before of [[60, 120], null, [60, 130]] as const) {
      if (before !== null) read(before);
      expect(complaint(() => read([100, 70]))).toBe(wanted);
    }
    expect(complaint(() => scenarioReader(survey)([100, 70]))).toBe(wanted);
    expect(read([60, 120]).scenario).toEqual(parseScenario(scenarioOfRun(survey, [60, 120])));
  });

  it('are found out also where only the filled-in scenario shows them', () => {
    // A no-load test whose voltage is all drop in the stator leakage.
    const curve = '[{ voltage: 300 V, current: 4 A }, { voltage: 400 V, current: 6 A }]';
    const source = text.replace(
      '  magnetising: 39 ohm\n',
      `  saturation: { main: ${curve} }\n  magnetising: 39 ohm\n`,
    );
    const leakage = [between('machine.statorLeakage', 'ohm', 1, 60)];
    const data = withValues(dataOf(source), changesOf(leakage, [59]));
    expect(inputPlaces(dataOf(source), leakage)).not.toBeNull();
    const read = scenarioReader(surveyOf(source, leakage));
    const plain = parseScenario(withValues(dataOf(source), changesOf(leakage, [1.1])));
    expect(plain.machine.mainSaturation?.length).toBeGreaterThan(1);
    expect(read([1.1]).scenario.machine.mainSaturation).toEqual(plain.machine.mainSaturation);
    const said = complaint(() => read([59]));
    expect(said).toContain('machine.saturation.main');
    expect(complaint(() => parseScenario(data, { fileName: 'base.yaml' }))).toBe(said);
  });
});

it('a base scenario that is none is refused with its lines', () => {
  const source = text.replace('lineVoltage: 400 V', 'lineVoltage: 400 kg');
  const survey = surveyOf(source, [between('load.inertia', 'kg m^2', 0.01, 1)]);
  expect(complaint(() => scenarioReader(survey))).toBe(
    complaint(() => parseScenario(source, { fileName: 'base.yaml' })),
  );
});
