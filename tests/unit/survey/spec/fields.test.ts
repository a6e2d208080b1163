import { describe, expect, it } from 'vitest';
import { fieldCodes, problemsOf, read, surveyOf } from './surveyText.ts';

type Field = Readonly<Record<string, unknown>>;

const random = (field: Field) => read(surveyOf({ vary: [field] })).fields[0]!;
const SWEEP = { ask: 'sweep', runs: undefined };
const sweep = (field: Field) => read(surveyOf({ ...SWEEP, vary: [field] })).fields[0]!;
const inertia = (keys: Field) => ({ field: 'load.inertia', ...keys });
const first = (field: Field) => problemsOf(surveyOf({ vary: [field] }))[0]!;

describe('the values of a field', () => {
  it('are read in the unit they are written in', () => {
    expect(sweep(inertia({ from: '0.2 kg m^2', to: '2 kg·m²', count: 12, spacing: 'logarithmic' }))).toEqual({
      path: 'load.inertia',
      unit: 'kg m^2',
      spread: { kind: 'grid', from: 0.2, to: 2, count: 12, spacing: 'logarithmic' },
    });
    expect(sweep(inertia({ from: '3 lb ft^2', to: '9 lb ft^2', count: 2 })).spread).toMatchObject({
      spacing: 'linear',
    });
    expect(
      random(inertia({ distribution: 'log uniform', from: '1 kg m^2', to: '2 kg m^2' })).spread.kind,
    ).toBe('logUniform');
    expect(random({ field: 'machine.poles', values: [2, 4] })).toMatchObject({ unit: '' });
  });

  it('of a worst case need only a range', () => {
    const worst = { ask: 'worst case', metric: 'startTime', seek: 'largest' };
    const kinds = ['linear', 'logarithmic'].map((spacing) => {
      const vary = [inertia({ from: '1 kg m^2', to: '2 kg m^2', spacing })];
      return read(surveyOf({ ...worst, vary })).fields[0]!.spread.kind;
    });
    expect(kinds).toEqual(['uniform', 'logUniform']);
    expect(fieldCodes(inertia({ values: ['1 kg m^2'] }), worst)).toEqual([
      'from: missingKey',
      'to: missingKey',
      'values: unknownKey',
    ]);
  });

  it('in `times` are multiples of what stands in the scenario, written as a person would', () => {
    // The friction torque of the example is 12 N m; its inertia 0.05 kg m^2.
    const path = 'load.torque.0.torque';
    const triangle = { distribution: 'triangular', from: '0.8 times', peak: '1 x', to: '1.2 ×' };
    expect(random({ field: path, ...triangle })).toEqual({
      path,
      unit: 'N m',
      spread: { kind: 'triangular', from: 9.6, peak: 12, to: 14.4 },
    });
    // In binary arithmetic 1.1 · 0.05 is 0.05500000000000001.
    expect(sweep(inertia({ values: ['1.1 times'] })).spread).toEqual({ kind: 'values', values: [0.055] });
  });

  it('in `times` of a field that is misspelt are refused for its name, not for their unit', () => {
    const field = { field: 'load.interia', values: ['0.8 times', '1.2 times'] };
    const problems = problemsOf(surveyOf({ vary: [field] }));
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ path: 'vary.0.field', code: 'unknownKey' });
    expect(problems[0]!.expected).toMatch(/^`inertia` \(did you mean that\?\)/u);
    // A field that exists and is not stated has nothing to be multiplied.
    const unstated = first({ field: 'starter.openingTime', values: ['0.8 times', '1.2 times'] });
    expect(unstated).toMatchObject({ path: 'vary.0.values.0', code: 'conflict' });
    expect(unstated.message).toContain('the scenario states nothing there');
  });

  it('in `times` of a negative number ascend like others', () => {
    const field = {
      field: 'load.torque.1.torque',
      distribution: 'normal',
      mean: '1 times',
      deviation: '0.1 times',
    };
    const cut = { ...field, from: '0.8 times', to: '1.3 times' };
    const spreads = [field, cut].map((one) => random(one).spread);
    expect(spreads).toEqual([
      { kind: 'normal', mean: -60, deviation: 6, from: -84, to: -36 },
      { kind: 'normal', mean: -60, deviation: 6, from: -78, to: -48 },
    ]);
  });

  it('of a normal distribution end four deviations from the mean where no end is stated', () => {
    const normal = { distribution: 'normal', mean: '1 times', deviation: '0.1 times' };
    expect(random(inertia(normal)).spread).toEqual({
      kind: 'normal',
      mean: 0.05,
      deviation: 0.005,
      from: 0.03,
      to: 0.07,
    });
    expect(random(inertia({ ...normal, from: '0.9 times' })).spread).toMatchObject({ from: 0.045, to: 0.07 });
  });
});

describe('a field is refused', () => {
  const uniform = { distribution: 'uniform', from: '1 kg m^2', to: '2 kg m^2' };
  it.each<[string, Field, readonly string[]]>([
    ['an unknown key', { ...uniform, fro: 1 }, ['fro: unknownKey']],
    ['no distribution', { from: '1 kg m^2', to: '2 kg m^2' }, ['distribution: missingKey']],
    ['an unknown distribution', { ...uniform, distribution: 'unifrm' }, ['distribution: unknownWord']],
    ['an end missing', { ...uniform, to: undefined }, ['to: missingKey']],
    ['a key of another distribution', { ...uniform, peak: '1 kg m^2' }, ['peak: conflict']],
    ['a list and a range', { values: ['1 kg m^2'], from: '1 kg m^2' }, ['from: conflict']],
    ['its ends exchanged', { ...uniform, to: '0.5 kg m^2' }, ['to: conflict']],
    ['equal ends', { ...uniform, to: '1 kg m^2' }, ['to: conflict']],
    ['two units', { ...uniform, to: '2 lb ft^2' }, ['to: wrongUnit']],
    ['a unit and times', { ...uniform, to: '2 times' }, ['to: wrongUnit']],
    ['a number that is text', { ...uniform, to: '2' }, ['to: missingUnit']],
    ['a word', { ...uniform, to: 'two' }, ['to: notANumber']],
    ['a list in place of a number', { ...uniform, to: ['2 kg m^2'] }, ['to: wrongType']],
    ['too large a number', { ...uniform, to: '1e999 kg m^2' }, ['to: notANumber']],
    [
      'a logarithm of zero',
      { distribution: 'log uniform', from: '0 kg m^2', to: '1 kg m^2' },
      ['from: outOfRange'],
    ],
    ['a peak outside', { ...uniform, distribution: 'triangular', peak: '3 kg m^2' }, ['peak: conflict']],
    [
      'a negative deviation',
      { distribution: 'normal', mean: '1 kg m^2', deviation: '-0.1 kg m^2' },
      ['deviation: outOfRange'],
    ],
    [
      'no deviation',
      { distribution: 'normal', mean: '1 kg m^2', deviation: '0 kg m^2' },
      ['deviation: outOfRange'],
    ],
    [
      'a mean outside',
      { ...uniform, distribution: 'normal', mean: '3 kg m^2', deviation: '1 kg m^2' },
      ['mean: conflict'],
    ],
    ['an empty list', { values: [] }, ['values: outOfRange']],
    ['a value twice', { values: ['1 kg m^2', '2 kg m^2', '1.0 kg m^2'] }, ['values.2: conflict']],
    ['text in place of a list', { values: '1 kg m^2' }, ['values: wrongType']],
  ])('with %s', (_, keys, codes) => {
    expect(fieldCodes(inertia(keys))).toEqual(codes);
  });

  it.each<[string, Field, readonly string[]]>([
    ['one value', { from: '1 kg m^2', to: '2 kg m^2', count: 1 }, ['count: outOfRange']],
    ['a negative count', { from: '1 kg m^2', to: '2 kg m^2', count: -3 }, ['count: outOfRange']],
    ['two values and a half', { from: '1 kg m^2', to: '2 kg m^2', count: 2.5 }, ['count: outOfRange']],
    ['no count', { from: '1 kg m^2', to: '2 kg m^2' }, ['count: missingKey']],
    [
      'a logarithm of zero',
      { from: '0 kg m^2', to: '2 kg m^2', count: 3, spacing: 'logarithmic' },
      ['from: outOfRange'],
    ],
    ['a distribution', { values: ['1 kg m^2'], distribution: 'uniform' }, ['distribution: unknownKey']],
  ])('in a sweep with %s', (_, keys, codes) => {
    expect(fieldCodes(inertia(keys), SWEEP)).toEqual(codes);
  });

  it('in `times` where nothing stands to be multiplied, or nothing sensible', () => {
    const times = (field: string) => ({ field, distribution: 'uniform', from: '0.9 times', to: '1.1 times' });
    expect(fieldCodes(times('supply.xOverR'))).toEqual(['from: conflict']);
    expect(first(times('supply.xOverR')).message).toContain('states nothing there');
    expect(fieldCodes(times('thermal.ambient'))).toEqual(['from: conflict']);
    expect(first(times('thermal.ambient')).message).toContain(
      'multiples of a temperature (45 degC) mean nothing',
    );
    const zero = problemsOf(surveyOf({ vary: [times('actions.0.at')] }));
    expect(zero.map(({ message }) => message)).toEqual([
      'is in `times`, and every multiple of 0 s is the same',
    ]);
    expect(fieldCodes(times('title'))).toEqual(['from: conflict']);
  });
});

describe('a field that the scenario does not have', () => {
  const values = { values: ['1 kg m^2', '2 kg m^2'] };
  it.each([
    ['load.inertai', 'unknownKey', /`inertia` \(did you mean that\?\)/u],
    ['lod.inertia', 'unknownKey', /`load` \(did you mean that\?\)/u],
    ['load.torque.2.torque', 'unknownKey', /`load\.torque\.0` to `load\.torque\.1`/u],
    ['load.inertia.value', 'unknownKey', /a key of the scenario/u],
    ['load.0', 'unknownKey', /inertia, torque/u],
    ['contactors.0.mass', 'unknownKey', /a list that stands/u],
    ['load', 'wrongType', /inertia, torque/u],
    ['load.torque', 'wrongType', /load\.torque\.0/u],
    ['title', 'wrongType', /a field that holds a number/u],
    ['titleBlock.plant', 'wrongType', /a field that holds a number/u],
    ['constructor', 'unknownKey', /one of schemaVersion/u],
    ['__proto__', 'unknownKey', /keys and list positions/u],
    ['load.__proto__.inertia', 'unknownKey', /keys and list positions/u],
    ['load..inertia', 'unknownKey', /keys and list positions/u],
    ['0', 'unknownKey', /keys and list positions/u],
  ])('is refused: %s', (field, code, expected) => {
    const problems = problemsOf(surveyOf({ vary: [{ field, ...values }] }));
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ path: 'vary.0.field', code });
    expect(problems[0]!.expected).toMatch(expected);
  });

  it('may be one that the format has and the file does not state', () => {
    expect(fieldCodes({ field: 'thermal.ambient', values: ['10 degC', '40 degC'] })).toEqual([]);
    expect(fieldCodes({ field: 'solver.endTime', values: ['5 s', '6 s'] })).toEqual([]);
  });
});

describe('impossible values of a field', () => {
  it('are told at the line of the end, in the words of the scenario', () => {
    const range = (from: string, to: string) => ({
      field: 'supply.frequency',
      distribution: 'uniform',
      from,
      to,
    });
    expect(fieldCodes(range('1 Hz', '60 Hz'))).toEqual(['from: outOfRange']);
    expect(fieldCodes(range('1 Hz', '5000 Hz'))).toEqual(['from: outOfRange', 'to: outOfRange']);
    expect(first(range('60 Hz', '5000 Hz'))).toMatchObject({
      path: 'vary.0.to',
      message: 'supply.frequency at its upper end, 5000 Hz: 5000 Hz is out of range',
      expected: 'a frequency from 10 Hz to 400 Hz',
    });
  });

  it('are told of the smallest and the largest of a list', () => {
    const values = ['20 ms', '-1 ms', '18 ms', '99999999 ms'];
    expect(fieldCodes({ field: 'starter.closingTime', values })).toEqual([
      'values.1: outOfRange',
      'values.3: outOfRange',
    ]);
  });

  it('are told once where every value is as wrong', () => {
    expect(fieldCodes({ field: 'supply.angle', values: ['1 kg', '2 kg', '3 kg'] })).toEqual([
      'values.0: wrongUnit',
    ]);
    expect(fieldCodes({ field: 'supply.angle', values: [1, 2] })).toEqual(['values.0: missingUnit']);
  });

  it('that contradict another statement are told with it', () => {
    const problem = first({ field: 'actions.1.at', values: ['-2 s', '1 s'] });
    expect(problem.path).toBe('vary.0.values.0');
    const switched = first({ field: 'starter.zeroSpeedSwitch.pickUpSpeed', values: ['1 rpm', '200 rpm'] });
    expect(switched.message).toContain(
      '1 rpm: starter.zeroSpeedSwitch.dropOutSpeed: is not below the pick-up speed',
    );
  });

  it('of an automatic cut come with the advice to state the ends', () => {
    const problem = first(inertia({ distribution: 'normal', mean: '1 times', deviation: '0.5 times' }));
    expect(problem).toMatchObject({ path: 'vary.0.mean', code: 'outOfRange' });
    expect(problem.message).toContain('-0.05 kg m^2');
    expect(problem.expected).toMatch(/or state `from` and `to`$/u);
  });

  it('are found in an estimated machine too', () => {
    const nameplate = (path: string, values: unknown) => ({ field: `machine.nameplate.${path}`, values });
    const check = (...vary: object[]) =>
      problemsOf(surveyOf({ scenario: 'what-if-only-the-nameplate-is-known.yaml', vary })).map(
        ({ path }) => path,
      );
    expect(check(nameplate('efficiency', ['90 %', '101 %']))).toEqual(['vary.0.values.1']);
  });
});
