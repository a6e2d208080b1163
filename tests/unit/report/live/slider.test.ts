import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../../../src/estimate/parseScenario.ts';
import {
  adjustableText,
  fieldText,
  fieldUnit,
  fieldValue,
  firstValue,
  SLIDER_POSITIONS,
  sliderPosition,
  sliderStep,
  sliderValue,
  timeText,
} from '../../../../src/report/live/slider.ts';
import { ADJUSTABLES, type HandRange } from '../../../../src/scenario/edit/adjustable.ts';
import { ADJUSTABLE_KEYS, type AdjustableKey } from '../../../../src/scenario/edit/edit.ts';
import { exampleText } from '../../../support/examples.ts';

const example = (name: string) => parseScenario(exampleText(name));
const belt = example('may-this-belt-be-plugged');

const LINEAR: HandRange = { min: 0.009, max: 0.5, log: false };
const LOG: HandRange = { min: 0.003, max: 8, log: true };

describe('a slider', () => {
  it('reaches both ends of its range exactly', () => {
    for (const range of [LINEAR, LOG]) {
      expect(sliderValue(0, range)).toBe(range.min);
      expect(sliderValue(SLIDER_POSITIONS, range)).toBe(range.max);
      expect([sliderPosition(range.min, range), sliderPosition(range.max, range)]).toEqual([0, 1000]);
    }
  });

  it('halves a linear range by difference and a logarithmic one by ratio', () => {
    // Three digits of the size of the range: half a thousandth of it; three digits of the value: half a per cent.
    expect(Math.abs(sliderValue(500, LINEAR) - (0.009 + 0.5) / 2)).toBeLessThan(0.51e-3);
    expect(Math.abs(sliderValue(500, LOG) / Math.sqrt(0.003 * 8) - 1)).toBeLessThan(0.005);
  });

  it('comes back to where it was put, within the position beside it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1000 }), fc.constantFrom(LINEAR, LOG), (position, range) => {
        expect(Math.abs(sliderPosition(sliderValue(position, range), range) - position)).toBeLessThanOrEqual(
          1,
        );
      }),
      { seed: 6 },
    );
  });

  it('gives larger values to larger positions', () => {
    for (const range of [LINEAR, LOG])
      for (let at = 1; at <= SLIDER_POSITIONS; at++)
        expect(sliderValue(at, range)).toBeGreaterThanOrEqual(sliderValue(at - 1, range));
  });

  it('holds a value from outside at its end', () => {
    expect(sliderPosition(0, LOG)).toBe(0);
    expect(sliderPosition(99, LINEAR)).toBe(1000);
  });
});

describe('a key', () => {
  it('steps over round numbers of the unit that is shown', () => {
    // 0.5 s less 9 ms in a hundred steps is 4.91 ms: the step is 2 ms.
    expect(sliderStep(0.0213, LINEAR, 'more', 1e3)).toBeCloseTo(0.022, 12);
    expect(sliderStep(0.022, LINEAR, 'more', 1e3)).toBeCloseTo(0.024, 12);
    expect(sliderStep(0.0213, LINEAR, 'less', 1e3)).toBeCloseTo(0.02, 12);
    expect(sliderStep(0.04, LINEAR, 'muchMore', 1e3)).toBeCloseTo(0.06, 12);
  });

  it('reaches the ends and does not pass them', () => {
    for (const range of [LINEAR, LOG]) {
      expect(sliderStep(0.1, range, 'least', 1)).toBe(range.min);
      expect(sliderStep(0.1, range, 'most', 1)).toBe(range.max);
      expect(sliderStep(range.max, range, 'muchMore', 1)).toBe(range.max);
      expect(sliderStep(range.min, range, 'less', 1)).toBe(range.min);
    }
  });

  it('moves every value, and back again to where a step begins', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.45, noNaN: true }),
        fc.constantFrom(LINEAR, LOG),
        (value, range) => {
          expect(sliderStep(value, range, 'more', 1)).toBeGreaterThan(value);
          expect(sliderStep(value, range, 'less', 1)).toBeLessThan(value);
        },
      ),
      { seed: 6 },
    );
    let value = 0.1;
    for (const key of ['more', 'more', 'less', 'less'] as const) value = sliderStep(value, LINEAR, key, 1e3);
    expect(value).toBeCloseTo(0.1, 12);
  });
});

describe('every adjustable of every example', () => {
  const scenarios = [
    'may-this-belt-be-plugged',
    'what-happens-after-the-stop-button',
    'what-does-a-full-reversal-cost',
    'should-this-fan-be-plugged',
    'how-hard-does-plugging-twist-the-shaft',
  ].map(example);

  it.each(ADJUSTABLE_KEYS)('lies on its slider, and its field is read back: %s', (key) => {
    for (const scenario of scenarios) {
      const { read, range, whyNot, label } = ADJUSTABLES[key];
      expect(whyNot(scenario)).toBeNull();
      expect(label(scenario)).not.toBe('');
      const { min, max } = range(scenario);
      const value = read(scenario) ?? firstValue(key, scenario);
      expect(value).toBeGreaterThanOrEqual(min);
      expect(value).toBeLessThanOrEqual(max);
      for (const units of ['SI', 'us'] as const) {
        const typed = fieldText(key, value, scenario, units);
        const back = fieldValue(key, typed, scenario, units);
        // Four digits.
        expect(Math.abs(Number(back) - value)).toBeLessThanOrEqual(5e-4 * Math.abs(value));
        const { perSi } = fieldUnit(key, scenario, units);
        // Within what may be stated, for any quantity.
        const alone = Number((max * perSi).toPrecision(2));
        expect(fieldValue(key, `${alone}`, scenario, units)).toBeCloseTo(alone / perSi, 6);
      }
    }
  });
});

describe('a field', () => {
  it('refuses what no scenario may state, and says what may be', () => {
    const said = (key: AdjustableKey, typed: string) => fieldValue(key, typed, belt, 'SI');
    expect(said('loadInertia', '-1 kg m^2')).toMatchObject({
      message: expect.stringContaining('0 kg·m² to'),
    });
    expect(said('loadTorque', '1e9')).toMatchObject({ message: expect.stringContaining('out of range') });
    expect(said('dropOutSpeed', '0')).toMatchObject({ message: expect.stringContaining('more than 0') });
    // Four poles at 50 Hz.
    expect(said('dropOutSpeed', '1501 rpm')).toHaveProperty('message');
    expect(said('dropOutSpeed', '1499 rpm')).toBeCloseTo((1499 * Math.PI) / 30, 6);
    expect(said('loadInertia', '0')).toBe(0);
  });

  it('takes any unit of its quantity, and says what is wrong with another', () => {
    expect(fieldValue('loadInertia', '0.08', belt, 'SI')).toBe(0.08);
    // Pound foot squared: 0.45359237 kg × (0.3048 m)².
    expect(fieldValue('loadInertia', '12 lb ft^2', belt, 'SI')).toBeCloseTo(
      12 * 0.45359237 * 0.3048 ** 2,
      12,
    );
    expect(fieldValue('loadInertia', '12', belt, 'us')).toBeCloseTo(12 * 0.45359237 * 0.3048 ** 2, 12);
    expect(fieldValue('deadTime', '40', belt, 'SI')).toBeCloseTo(0.04, 12);
    expect(fieldValue('closingAngle', '180', belt, 'SI')).toBeCloseTo(Math.PI, 12);
    for (const wrong of ['', 'much', '3 furlongs', '1,5 kg m^2', '5 N m'])
      expect(fieldValue('loadInertia', wrong, belt, 'SI')).toMatchObject({
        message: expect.stringContaining('expected'),
      });
  });
});

describe('words', () => {
  it('name what is not there', () => {
    expect(adjustableText('lineResistance', null, belt, 'SI')).toBe('no resistors');
    expect(adjustableText('sourcePower', null, belt, 'SI')).toBe('infinitely strong');
  });

  it('show a value with its unit', () => {
    expect(adjustableText('sourcePower', 1.5e6, belt, 'SI')).toBe('1.50 MVA');
    expect(adjustableText('deadTime', 0.021, belt, 'SI')).toBe('21.0 ms');
    expect(adjustableText('loadTorque', 12, belt, 'us')).toBe('8.85 lbf·ft');
    expect(timeText(0.0125)).toBe('12.5 ms');
  });

  it('say why a table of torques cannot be turned', () => {
    const { whyNot } = ADJUSTABLES.loadTorque;
    const points = [{ speed: 0, torque: 1 }];
    expect(
      whyNot({ ...belt, load: { ...belt.load, torques: [{ kind: 'table', points, mirrored: true }] } }),
    ).toContain('table');
    expect(whyNot({ ...belt, load: { ...belt.load, torques: [] } })).not.toBeNull();
  });

  it('say what needs the zero-speed switch', () => {
    const { whyNeeded } = ADJUSTABLES.dropOutSpeed;
    expect(whyNeeded(belt)).toBeNull();
    expect(whyNeeded(example('what-happens-after-the-stop-button'))).not.toBeNull();
  });
});
