import { describe, expect, it } from 'vitest';
import { breakingCategory } from '../../../../src/assess/wear/breakingCategory.ts';
import { lifeAtBreaking } from '../../../../src/assess/wear/contactLife.ts';
import { mixedLife } from '../../../../src/assess/wear/mixedLife.ts';
import type { ContactorData } from '../../../../src/scenario/scenario.ts';
import { BARE_CONTACTOR, STATED_CONTACTOR } from '../../../support/contactors.ts';
import { expectWithin } from '../../../support/tolerance.ts';

const EXACT = { relative: 1e-12 };
/** 0.17 of 400 V, and the geometric mean of that and 400 V. */
const LITTLE = 68;
const BETWEEN = Math.sqrt(68 * 400);
const life = (device: ContactorData, current: number, voltage: number) =>
  lifeAtBreaking(device, current, voltage, 400);

describe('life with stated lives', () => {
  it('passes through the AC-3 point, rated current against 0.17 of the rated voltage', () => {
    expectWithin(life(STATED_CONTACTOR, 10, LITTLE).operations, 1e6, EXACT, 'life');
  });

  it('passes through the AC-4 point, six times the rated current in AC-4 against the full voltage', () => {
    expectWithin(life(STATED_CONTACTOR, 30, 400).operations, 1e5, EXACT, 'life');
  });

  it('goes on with the exponent 1.4 within a category', () => {
    expectWithin(life(STATED_CONTACTOR, 20, LITTLE).operations, 1e6 / 2 ** 1.4, EXACT, 'AC-3');
    expectWithin(life(STATED_CONTACTOR, 60, 400).operations, 1e5 / 2 ** 1.4, EXACT, 'AC-4');
  });

  it('at the geometric mean of the two voltages is the geometric mean of the two curves', () => {
    // At 30 A: 10⁶/3^1.4 against little voltage, 10⁵ against all of it
    expectWithin(
      life(STATED_CONTACTOR, 30, BETWEEN).operations,
      Math.sqrt((1e6 / 3 ** 1.4) * 1e5),
      EXACT,
      'life',
    );
  });

  it('does not grow further below the voltage of the AC-3 test, and shrinks beyond full voltage with a remark', () => {
    expectWithin(life(STATED_CONTACTOR, 10, 20).operations, 1e6, EXACT, 'little voltage');
    const beyond = life(STATED_CONTACTOR, 30, 2 * 400);
    expect(beyond.operations).toBeLessThan(0.9e5);
    expect(beyond.remark).toContain('exceeds that of every test');
    expect(life(STATED_CONTACTOR, 30, 1.04 * 400).remark).toBe('');
  });

  it('uses the rated voltage of the device before that of the supply', () => {
    const on690 = { ...STATED_CONTACTOR, ratedVoltage: 690 };
    expectWithin(lifeAtBreaking(on690, 30, 690, 400).operations, 1e5, EXACT, 'of the device');
    expectWithin(
      lifeAtBreaking({ ...on690, ratedVoltage: null }, 30, 400, 400).operations,
      1e5,
      EXACT,
      'of the supply',
    );
  });

  it('is never shorter against less voltage, even where the stated lives say so', () => {
    const odd = { ...STATED_CONTACTOR, lifeAc3: 1e4 };
    expectWithin(life(odd, 10, LITTLE).operations, 1e5 * 3 ** 1.4, EXACT, 'life');
  });

  it('has a range of a factor of two, and says what it stands on', () => {
    const { operations, low, high, generic, origin } = life(STATED_CONTACTOR, 10, LITTLE);
    expectWithin(low, operations / 2, EXACT, 'low');
    expectWithin(high, operations * 2, EXACT, 'high');
    expect(generic).toBe(false);
    expect(origin).toBe(
      'stated: life in AC-3, life in AC-4; range of a factor of 2 either way: common practice, no source',
    );
  });

  it('stops growing where currents are too small for their wear to be known, and says so', () => {
    const tiny = life(STATED_CONTACTOR, 0, LITTLE);
    expectWithin(tiny.operations, 1e6 * 20 ** 1.4, EXACT, 'life');
    expect(tiny.remark).toContain('0.05 of the rated one');
  });
});

describe('life with one of the two lives stated', () => {
  it('has the other at the ratio of sintered contacts, 40, and says so', () => {
    const only3 = { ...BARE_CONTACTOR, lifeAc3: 8e5 };
    const only4 = { ...BARE_CONTACTOR, lifeAc4: 5e4, ratedCurrentAc4: 5 };
    expectWithin(life(only3, 60, 400).operations, 2e4, EXACT, 'AC-4');
    expect(life(only3, 60, 400).remark).toContain('1/40');
    expectWithin(life(only4, 5, LITTLE).operations, 2e6, EXACT, 'AC-3');
    expect(life(only4, 5, LITTLE).remark).toContain('40 times');
  });

  it('takes the rated current in AC-4 as that in AC-3 where it is not stated, and says so', () => {
    const noCurrent = { ...STATED_CONTACTOR, ratedCurrentAc4: null };
    expectWithin(life(noCurrent, 60, 400).operations, 1e5, EXACT, 'life');
    expect(life(noCurrent, 60, 400).remark).toContain('(assumed)');
  });
});

describe('life from a table', () => {
  const TABLE = [
    { current: 10, operations: 1e6 },
    { current: 40, operations: 1e5 },
    { current: 160, operations: 1e3 },
  ];
  const device = { ...BARE_CONTACTOR, lifeTable: TABLE };

  it('passes through its points', () => {
    for (const { current, operations } of TABLE)
      expectWithin(life(device, current, 400).operations, operations, EXACT, `at ${current} A`);
  });

  it('is the geometric mean of two points at the geometric mean of their currents', () => {
    expectWithin(life(device, 20, 400).operations, Math.sqrt(1e11), EXACT, 'first piece');
    expectWithin(life(device, 80, 400).operations, 1e4, EXACT, 'second piece');
    expect(life(device, 80, 400).remark).not.toContain('extrapolated');
  });

  it('goes on beyond its ends with the slope there, and says so', () => {
    expectWithin(life(device, 2.5, 400).operations, 1e7, EXACT, 'below');
    expectWithin(life(device, 640, 400).operations, 10, EXACT, 'above');
    expect(life(device, 2.5, 400).remark).toContain('below the table');
    expect(life(device, 640, 400).remark).toContain('above the table');
  });

  it('of one point goes on with the exponent 1.4', () => {
    const one = { ...BARE_CONTACTOR, lifeTable: [{ current: 10, operations: 1e6 }] };
    expectWithin(life(one, 20, 400).operations, 1e6 / 2 ** 1.4, EXACT, 'life');
  });

  it('holds at every voltage, on the safe side, where no life in AC-3 is stated', () => {
    expectWithin(life(device, 40, LITTLE).operations, 1e5, EXACT, 'life');
    expect(life(device, 40, LITTLE).remark).toContain('full recovery voltage');
  });

  it('holds at full voltage and gives way to the life in AC-3 where that is stated', () => {
    const both = { ...device, lifeAc3: 3e6 };
    expectWithin(life(both, 10, LITTLE).operations, 3e6, EXACT, 'little voltage');
    expectWithin(life(both, 10, 400).operations, 1e6, EXACT, 'full voltage');
  });
});

describe('life without any stated', () => {
  it('is generic, with a range of a factor of four', () => {
    const { operations, low, high, generic } = life(BARE_CONTACTOR, 10, LITTLE);
    expectWithin(operations, 1.2e6, EXACT, 'life');
    expectWithin(low, 3e5, EXACT, 'low');
    expectWithin(high, 4.8e6, EXACT, 'high');
    expect(generic).toBe(true);
  });
});

describe('a mixed duty', () => {
  it('adds up damage: half and half of 100 and 300 operations last 150', () => {
    expectWithin(
      mixedLife([
        { share: 0.5, life: 100 },
        { share: 0.5, life: 300 },
      ]),
      150,
      EXACT,
      'life',
    );
  });

  it('that wears nothing has no life', () => {
    expect(mixedLife([])).toBeNull();
    expect(mixedLife([{ share: 0, life: 100 }])).toBeNull();
  });
});

describe('a breaking', () => {
  const rating = { current: 10, voltage: 400 };
  // √6·10 A = 24.49 A; √0.17·400 V = 164.9 V
  it.each([
    [24, 160, 'AC-3-like'],
    [25, 160, 'AC-4-like'],
    [24, 166, 'AC-4-like'],
    [60, 400, 'AC-4-like'],
    [10, 68, 'AC-3-like'],
  ] as const)('of %d A against %d V is %s', (current, voltage, expected) => {
    expect(breakingCategory(current, voltage, rating)).toBe(expected);
  });
});
