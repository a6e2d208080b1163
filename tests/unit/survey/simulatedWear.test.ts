import { describe, expect, it } from 'vitest';
import { planStarters } from '../../../src/survey/plan/planStarters.ts';
import { simulatedWear } from '../../../src/survey/plan/simulatedWear.ts';
import { isWear, type StarterWear } from '../../../src/survey/plan/starterWear.ts';
import { day, planRow, type RowParts } from '../../support/planRows.ts';
import { expectWithin } from '../../support/tolerance.ts';

function wear(parts: RowParts): StarterWear {
  const found = simulatedWear(planRow(parts), 1);
  if (!isWear(found)) throw new Error(JSON.stringify(found));
  return found;
}

const LIVES = { ratedCurrentAc4: 18, lifeAc3: 1e6, lifeAc4: 25_000 };

describe('wear from a simulated stop', () => {
  const plain = wear({ contactor: LIVES });

  it('of a plug stop is that of AC-4 in the reversing contactor and that of AC-3 in the forward one', () => {
    // 15 A motor on an 18 A contactor: running current below Ie against part of the voltage; 6.8 times rated and a little less
    // near rest, against full voltage, beside the 6·Ie of the AC-4 test.
    expect(plain.forward.plug).toBeLessThan(1e-6);
    expect(plain.forward.plug).toBeGreaterThan(1e-8);
    expect(plain.reverse.plug).toBeGreaterThan(0.25 / 25_000);
    expect(plain.reverse.plug).toBeLessThan(1.5 / 25_000);
    expect(plain.reverse.normal).toBe(0);
  });

  it('halves where the stated lives double', () => {
    const twice = wear({ contactor: { ...LIVES, lifeAc3: 2e6, lifeAc4: 50_000 } });
    expectWithin(twice.reverse.plug, plain.reverse.plug / 2, { relative: 1e-9 }, 'reversing contactor');
    expectWithin(twice.forward.normal, plain.forward.normal / 2, { relative: 1e-9 }, 'forward contactor');
  });

  it('of a starter that coasts is that of the running current alone', () => {
    const coast = wear({ contactor: LIVES, duty: { stopBy: 'coast' } });
    expect(coast.reverse).toMatchObject({ normal: 0, plug: 0 });
    expect(coast.forward.normal).toBeLessThan(1e-6);
    expect(coast.forward.normal).toBeGreaterThan(1e-8);
  });

  it('says whether the lives are stated or a generic curve, and what was assumed', () => {
    expect(plain.origin).toBe('as stated for the contactor');
    expect(plain.remarks).toEqual([]);
    const generic = wear({
      load: { inertia: null, kind: null, torque: null },
      motor: { lockedRotorCurrent: null },
    });
    expect(generic.origin).toMatch(/^generic curve/u);
    expect(generic.remarks[0]).toMatch(/^Assumed: locked-rotor current .*; load inertia .*; load torque /u);
    expect(generic.reverse.lifeFactor.low).toBeLessThan(plain.reverse.lifeFactor.low);
  });

  it('of data that contradict themselves is not found, and the reason is named', () => {
    // 7.5 kW at 400 V take about 15 A, not 40.
    const row = planRow({ tag: 'odd', motor: { current: 40, powerFactor: 0.83, efficiency: 0.9 } });
    const { starters, lacking, impossible } = planStarters([row], day('2026-05-02'), simulatedWear);
    expect({ starters, lacking }).toEqual({ starters: [], lacking: [] });
    expect(impossible[0]?.reasons.length).toBe(1);
    expect(impossible[0]?.reasons[0]).toMatch(/^power of 7\.5 kW contradicts efficiency 90 % /u);
  });

  it('of a load that plugging cannot stop is not found', () => {
    // An overhauling load of 1.6 times rated torque: more than the motor brakes with while plugging.
    const found = simulatedWear(planRow({ load: { inertia: 0.1, kind: 'gravity', torque: -80 } }), 1);
    expect('reasons' in found && found.reasons[0]).toMatch(/^plugging does not bring this load to rest/u);
  });

  it.each(['plug', 'coast'] as const)('of a load that the motor cannot drive is not found (%s)', (stopBy) => {
    // Ten times rated torque.
    const load = { inertia: 0.1, kind: 'friction', torque: 500 } as const;
    expect(simulatedWear(planRow({ load, duty: { stopBy } }), 1)).toEqual({
      reasons: ['the motor cannot drive this load at any steady speed (power, load kind, load torque)'],
    });
  });

  it('does not depend on what the table calls the starter', () => {
    const named = wear({ contactor: LIVES, tag: '電'.repeat(200), description: 'long\n'.repeat(40) });
    expect(named).toEqual(plain);
  });
});
