import { describe, expect, it } from 'vitest';
import { completeNameplate, notesOf } from '../../../src/estimate/completeNameplate.ts';
import type { Nameplate } from '../../../src/scenario/nameplate.ts';
import { ScenarioError } from '../../../src/scenario/scenarioError.ts';
import { BARE_PLATE, FULL_PLATE } from '../../support/ratedMotor.ts';
import { expectWithin } from '../../support/tolerance.ts';

describe('completeNameplate', () => {
  it('keeps what is given and notes nothing then', () => {
    const complete = completeNameplate(FULL_PLATE);
    expect(complete.current.value).toBe(21.5);
    expect(complete.lockedRotorCurrent.value).toBe(7 * 21.5);
    expect(notesOf(complete)).toEqual([]);
  });

  it('says of everything it fills in where it comes from', () => {
    const notes = notesOf(completeNameplate(BARE_PLATE));
    expect(notes.map(({ path, origin }) => [path, origin])).toEqual([
      ['nameplate.design', 'assumed'],
      ['nameplate.speed', 'assumed'],
      ['nameplate.current', 'derived'],
      ['nameplate.powerFactor', 'assumed'],
      ['nameplate.efficiency', 'assumed'],
      ['nameplate.lockedRotorCurrent', 'standard'],
      ['nameplate.lockedRotorTorque', 'standard'],
      ['nameplate.breakdownTorque', 'standard'],
      ['inertia', 'assumed'],
    ]);
    expect(notes.every(({ source }) => (source ?? '').length > 10)).toBe(true);
  });

  it('takes an unmarked motor for IEC design N at 50 Hz and for NEMA design B at 60 Hz', () => {
    expect(completeNameplate(BARE_PLATE).design.letter).toBe('N');
    expect(completeNameplate({ ...BARE_PLATE, frequency: 60, lineVoltage: 460 }).design.letter).toBe('B');
  });

  it.each([
    ['current', ['powerFactor', 'efficiency']],
    ['powerFactor', ['current', 'efficiency']],
    ['efficiency', ['current', 'powerFactor']],
  ] as const)('computes %s from the two others and the power', (missing, others) => {
    const plate = { ...BARE_PLATE };
    const complete = completeNameplate({
      ...plate,
      ...Object.fromEntries(others.map((key) => [key, FULL_PLATE[key]])),
    });
    expect(complete[missing].origin).toBe('derived');
    const { current, powerFactor, efficiency } = complete;
    // P = √3·U·I·cos φ·η
    const power = Math.sqrt(3) * 400 * current.value * powerFactor.value * efficiency.value;
    expectWithin(power, 11e3, { relative: 1e-12 }, 'power');
  });

  it('derives a power factor from a current alone, with the efficiency of the power', () => {
    const { powerFactor, efficiency } = completeNameplate({ ...BARE_PLATE, current: 21.5 });
    // Class IE2, 11 kW, 4 poles: 89.8 % (IEC 60034-30-1, from memory); a formula's rounding.
    expectWithin(efficiency.value, 0.898, { absolute: 5e-4 }, 'efficiency');
    expectWithin(
      powerFactor.value,
      11e3 / (Math.sqrt(3) * 400 * 21.5 * 0.898),
      { relative: 1e-3 },
      'power factor',
    );
  });

  it('gives design D a slip of 5 to 8 % and its locked-rotor torque', () => {
    const { slip, lockedRotorTorque } = completeNameplate({ ...BARE_PLATE, frequency: 60, design: 'D' });
    expect(slip.value).toBeGreaterThanOrEqual(0.05);
    expect(slip.value).toBeLessThanOrEqual(0.08);
    expect(lockedRotorTorque).toMatchObject({ value: 2.75, kind: 'least', origin: 'standard' });
  });

  it('lowers a typical efficiency that the stated slip leaves no room for', () => {
    // At 12 % slip the rotor alone loses 13.6 % of the output.
    const { efficiency } = completeNameplate({ ...BARE_PLATE, speed: 0.88 * 50 * Math.PI });
    expect(1 / efficiency.value - 1).toBeGreaterThan(0.12 / 0.88 / 0.61);
  });

  it.each([
    ['ten poles', { poles: 10 }],
    ['a power above all tables', { power: 2e6 }],
  ])('assumes typical starting values for %s', (_name, change) => {
    const { lockedRotorTorque, breakdownTorque } = completeNameplate({ ...BARE_PLATE, ...change });
    expect([lockedRotorTorque.origin, breakdownTorque.origin]).toEqual(['assumed', 'assumed']);
  });

  it('takes the middle of a code letter’s band and its ends as the range', () => {
    const { lockedRotorCurrent } = completeNameplate({
      ...BARE_PLATE,
      lockedRotorCurrent: { kind: 'codeLetter', letter: 'g' },
    });
    // G is 5.6 to 6.3 kVA/hp; 11 kW are 14.751 hp of 745.7 W.
    const kva = (Math.sqrt(3) * 400 * lockedRotorCurrent.value) / 1000 / 14.751;
    expectWithin(kva, 5.95, { relative: 1e-4 }, 'kVA/hp');
    expectWithin(lockedRotorCurrent.range[0] * kva, 5.6, { relative: 1e-4 }, 'low end');
    expectWithin(lockedRotorCurrent.range[1] * kva, 6.3, { relative: 1e-4 }, 'high end');
  });

  it('allows the tolerances of IEC 60034-1', () => {
    const complete = completeNameplate(FULL_PLATE);
    // From memory: locked-rotor current +20 %, torque −15/+25 %, breakdown torque −10 %, slip ±20 %.
    expect(complete.lockedRotorCurrent.range).toEqual([1, 1.2]);
    expect(complete.lockedRotorTorque.range).toEqual([0.85, 1.25]);
    expect(complete.breakdownTorque.range).toEqual([0.9, 1]);
    expect(complete.slip.range).toEqual([0.8, 1.2]);
  });
});

describe('a contradictory nameplate is refused with the item and the reason', () => {
  const refusal = (change: Partial<Nameplate>) => {
    try {
      completeNameplate({ ...FULL_PLATE, ...change });
    } catch (error) {
      if (error instanceof ScenarioError) return error.problems[0]!;
      throw error;
    }
    throw new Error('not refused');
  };

  it.each([
    ['horsepower read as kW', { power: 15e3 }, 'power', /11(\.\d)? kW/u],
    ['a phase current', { current: 12.4 }, 'power', /which is 6\.3\d* kW/u],
    [
      'a current too small for the power',
      { current: 15, powerFactor: null, efficiency: null },
      'current',
      /too little/u,
    ],
    ['a power factor of 1.05', { powerFactor: 1.05 }, 'powerFactor', /between 0 and 1/u],
    ['efficiency in per cent', { efficiency: 89 }, 'efficiency', /between 0 and 1/u],
    ['the speed of another number of poles', { speed: (975 * Math.PI) / 30 }, 'speed', /slip of 35/u],
    ['a speed above the synchronous one', { speed: (1510 * Math.PI) / 30 }, 'speed', /1500 rpm/u],
    [
      'a slip that costs more than all losses',
      { speed: (1260 * Math.PI) / 30 },
      'efficiency',
      /slip of 16 %/u,
    ],
    [
      'a locked rotor that takes no more than rated current',
      { lockedRotorCurrent: { kind: 'multiple', ofRated: 1 } },
      'lockedRotorCurrent',
      /1 times/u,
    ],
    [
      'an unknown code letter',
      { lockedRotorCurrent: { kind: 'codeLetter', letter: 'Q' } },
      'codeLetter',
      /no NEMA code letter/u,
    ],
    [
      'a breakdown torque below that of the locked rotor',
      { breakdownTorque: 2 },
      'breakdownTorque',
      /locked-rotor torque of 2\.3/u,
    ],
    [
      'a breakdown torque below rated torque',
      { breakdownTorque: 0.9, lockedRotorTorque: null },
      'breakdownTorque',
      /carry its rated torque/u,
    ],
    ['an odd number of poles', { poles: 5 }, 'poles', /no number of poles/u],
    ['a negative power', { power: -11e3 }, 'power', /positive/u],
  ] as const)('%s', (_name, change, item, reason) => {
    const { path, message, code, found, expected } = refusal(change as Partial<Nameplate>);
    expect(path).toBe(`machine.nameplate.${item}`);
    expect(message).toMatch(reason);
    expect(code).toBe('conflict');
    expect(found).not.toBe('');
    expect(expected).not.toBe('');
  });

  it('a high-starting design may have its largest torque at standstill', () => {
    const { breakdownTorque } = completeNameplate({
      ...FULL_PLATE,
      design: 'D',
      lockedRotorTorque: 2.9,
      breakdownTorque: 2.5,
    });
    expect(breakdownTorque).toMatchObject({ value: 2.9, origin: 'derived' });
  });
});
