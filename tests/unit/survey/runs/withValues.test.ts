import { describe, expect, it } from 'vitest';
import { changesOf, whyNoPlace, withValues } from '../../../../src/survey/runs/withValues.ts';
import { fieldPath } from '../../../../src/survey/spec/fieldPath.ts';
import { plainValue, valueText } from '../../../../src/survey/spec/valueText.ts';

const DATA = { title: 'A', load: { inertia: '1 kg m^2', torque: [{ kind: 'fan' }, { torque: '5 N m' }] } };

describe('values put into plain data', () => {
  it('stand at their paths, and what is given is as it was', () => {
    const before = structuredClone(DATA);
    const after = withValues(DATA, [
      { path: 'load.torque.1.torque', value: '6 N m' },
      { path: 'load.inertia', value: '2 kg m^2' },
      { path: 'thermal.ambient', value: '40 degC' },
      { path: 'solver.a.b', value: 1 },
    ]);
    expect(after).toEqual({
      title: 'A',
      load: { inertia: '2 kg m^2', torque: [{ kind: 'fan' }, { torque: '6 N m' }] },
      thermal: { ambient: '40 degC' },
      solver: { a: { b: 1 } },
    });
    expect(DATA).toEqual(before);
    expect((after as typeof DATA).load.torque[0]).toBe(DATA.load.torque[0]);
  });

  it.each([
    'load.torque.2.torque',
    'load.torque.kind',
    'load.0',
    'duty.0.x',
    'title.x',
    'load',
    '__proto__.x',
    '',
  ])('do not make list entries nor lead through texts: %s', (path) => {
    expect(() => withValues(DATA, [{ path, value: 1 }])).toThrow(/expected/u);
    expect(Object.getPrototypeOf({})).not.toHaveProperty('x');
  });

  it('can go where nothing is in the way', () => {
    expect(whyNoPlace(DATA, ['load', 'torque', 1, 'torque'])).toBeNull();
    expect(whyNoPlace(DATA, ['duty', 'cycle'])).toBeNull();
    expect(whyNoPlace(DATA, ['load', 'torque', 2])).toMatchObject({ code: 'unknownKey' });
  });

  it('come from the values of a run', () => {
    const spread = { kind: 'values', values: [1] } as const;
    const fields = [
      { path: 'load.inertia', unit: 'kg m^2', spread },
      { path: 'machine.poles', unit: '', spread },
    ];
    expect(changesOf(fields, [0.1, 4])).toEqual([
      { path: 'load.inertia', value: '0.1 kg m^2' },
      { path: 'machine.poles', value: 4 },
    ]);
    expect(() => changesOf(fields, [0.1])).toThrow('no value for machine.poles');
  });
});

describe('the text of a value', () => {
  it('is the shortest that reads back to the same number', () => {
    expect(valueText(0.55, 'kg m^2')).toBe('0.55 kg m^2');
    expect(valueText(4, '%')).toBe('4 %');
    expect(valueText(0.84, '')).toBe('0.84');
    expect(valueText(-0, 'deg')).toBe('0 deg');
    expect(Object.is(plainValue(-0, ''), 0)).toBe(true);
    for (const number of [0.1 + 0.2, 1e-7, 1e21, 5e-324, 1.7976931348623157e308, 2 / 3, -1e-9])
      expect(Number(valueText(number, ''))).toBe(number);
  });
});

describe('a path', () => {
  it('is keys and list positions from 0', () => {
    expect(fieldPath('load.torque.10.torque')).toEqual(['load', 'torque', 10, 'torque']);
    for (const path of [
      '',
      '.',
      'a.',
      '0',
      'a.00',
      'a.-1',
      'a.1.5e3',
      'a b',
      '__proto__',
      `${'a.'.repeat(12)}a`,
    ])
      expect(fieldPath(path)).toBeNull();
  });
});
