import { describe, expect, it } from 'vitest';
import { contactWear } from '../../../../src/assess/wear/contactWear.ts';
import { genericContactor } from '../../../../src/assess/wear/genericContactor.ts';
import { steadyState } from '../../../../src/machine/steadyState.ts';
import type { DutyData, Scenario } from '../../../../src/scenario/scenario.ts';
import {
  BARE_CONTACTOR,
  breaking,
  making,
  PLUGGING_DUTY,
  pairOf,
  START_AND_PLUG,
  STATED_CONTACTOR,
} from '../../../support/contactors.ts';
import { scenarioOf } from '../../../support/scenarios.ts';
import { KRAUSE } from '../../../support/textbookMachines.ts';
import { expectWithin } from '../../../support/tolerance.ts';

const EXACT = { relative: 1e-9 };
const plant: Scenario = {
  ...scenarioOf(KRAUSE.hp3),
  supply: { ...KRAUSE.hp3.supply, lineVoltage: 400 },
};
const wearOf = (duty: DutyData | null, more: Partial<Parameters<typeof pairOf>[1]> = {}) =>
  contactWear(START_AND_PLUG, pairOf(STATED_CONTACTOR, more), duty, plant);

// By hand: the forward contactor breaks 10 A against 68 V, its AC-3 point: 1e6. The reversing one breaks 30 A against 400 V, its
// AC-4 point: 1e5.

describe('contacts that only plug', () => {
  const wear = wearOf(PLUGGING_DUTY);

  it('last as long as what each contactor breaks allows', () => {
    expectWithin(wear.forward.operations?.value, 1e6, EXACT, 'forward');
    expectWithin(wear.reverse.operations?.value, 1e5, EXACT, 'reverse');
    expect(wear.forward.role).toBe('driving');
    expect(wear.reverse.role).toBe('plugging');
  });

  it('are replaced first in the reversing contactor', () => {
    expect(wear.governing).toBe('reverse');
  });

  it('have the range of a stated life', () => {
    expectWithin(wear.reverse.operations?.low, 5e4, EXACT, 'low');
    expectWithin(wear.reverse.operations?.high, 2e5, EXACT, 'high');
  });

  it('are chosen by AC-3 where they break running current and by AC-4 where they plug', () => {
    expect(wear.forward.recommendedCategory).toBe('AC-3');
    expect(wear.reverse.recommendedCategory).toBe('AC-4');
    expect(wear.reverse.categoryReason).toContain('30 A (3 times its rated current in AC-3) against 400 V');
  });

  it('carry that make erosion is not judged', () => {
    for (const contactor of [wear.forward, wear.reverse])
      expect(contactor.missing).toContain('make erosion is not judged because the bounce time is missing');
    expect(wear.forward.makings.start?.wear).toBeNull();
    expect(wear.reverse.makings.plugging?.wear).toBeNull();
    expect(wear.forward.perEvent.start).toBeNull();
  });
});

describe('mixed duty', () => {
  it('of plug stops and normal stops wears the reversing contactor by the plug stops alone', () => {
    const wear = wearOf({ ...PLUGGING_DUTY, pluggingShare: 0.25 });
    expectWithin(wear.forward.operations?.value, 1e6, EXACT, 'forward');
    expectWithin(wear.reverse.operations?.value, 4e5, EXACT, 'reverse');
    expectWithin(wear.forward.closingsPerOperation, 1, EXACT, 'forward closings');
    expectWithin(wear.reverse.closingsPerOperation, 0.25, EXACT, 'reverse closings');
  });

  it('with inching breaks the current at rest against the full voltage', () => {
    const wear = wearOf({ ...PLUGGING_DUTY, pluggingShare: 0.5, inchingShare: 0.2 });
    const atRest = steadyState(plant.machine, plant.supply, 1).current;
    const inching = 1e5 * (30 / atRest) ** 1.4;
    expectWithin(wear.forward.operations?.value, 1 / (0.8 / 1e6 + 0.2 / inching), EXACT, 'forward');
    expectWithin(wear.reverse.operations?.value, 2e5, EXACT, 'reverse');
    const [, inch] = wear.forward.breakings;
    expect(inch?.occasion).toBe('inching');
    expect(inch?.origin).toContain('estimated');
    expect(wear.forward.recommendedCategory).toBe('AC-4');
  });

  it('of full reversals wears both contactors by half of the running breakings', () => {
    const wear = wearOf({ ...PLUGGING_DUTY, cycle: 'fullReversal', pluggingShare: 0 });
    expectWithin(wear.forward.operations?.value, 2e6, EXACT, 'forward');
    expectWithin(wear.reverse.operations?.value, 2e6, EXACT, 'reverse');
    expectWithin(wear.forward.closingsPerOperation, 0.5, EXACT, 'closings');
  });

  it('that only starts and coasts leaves the reversing contactor alone', () => {
    const wear = wearOf({ ...PLUGGING_DUTY, cycle: 'startCoast', pluggingShare: 0 });
    expect(wear.reverse.operations).toBeNull();
    expect(wear.reverse.wearUnknown).toBe(false);
    expect(wear.reverse.recommendedCategory).toBeNull();
    expect(wear.governing).toBe('forward');
  });
});

describe('make erosion', () => {
  it('adds to what breaking wears', () => {
    // Contained: 3·(2/π)·√2·60·0.002 C; each start brings two AC-3 breakings' charge more: 2e-6 per start beside 1e-6.
    const contained = 3 * (2 / Math.PI) * Math.SQRT2 * 60 * 0.002;
    const charge = ((1 + Math.sqrt(3)) * Math.SQRT2 * 10) / (2 * Math.PI * 60);
    const means = {
      ...START_AND_PLUG,
      makings: [making('forward', 90, (contained + 2 * charge) / 3), making('reverse', 90, contained / 3)],
    };
    const wear = contactWear(means, pairOf({ ...STATED_CONTACTOR, bounceTime: 0.002 }), PLUGGING_DUTY, plant);
    expectWithin(wear.forward.operations?.value, 1e6 / 3, EXACT, 'forward');
    expectWithin(wear.reverse.operations?.value, 1e5, EXACT, 'reverse');
    expect(wear.forward.missing.join()).not.toContain('make erosion');
  });

  it('of a start is not judged where the machine runs at the beginning', () => {
    const means = { ...START_AND_PLUG, makings: [making('forward', 50, 1), making('reverse', 70, 1)] };
    const device = { ...STATED_CONTACTOR, bounceTime: 0.002 };
    const wear = contactWear(means, pairOf(device), PLUGGING_DUTY, { ...plant, initial: 'runningForward' });
    expect(wear.forward.makings.start?.wear).toBeNull();
    expect(wear.forward.missing).toContain('make erosion is not judged because the run holds no start');
  });
});

describe('the worst pole', () => {
  it('is named, and brings the early end of the range forward', () => {
    const means = {
      ...START_AND_PLUG,
      breakings: [breaking('forward', 10, 68), breaking('reverse', 30, 400, [0.1, 0.3, 0.2])],
    };
    const wear = contactWear(means, pairOf(STATED_CONTACTOR), PLUGGING_DUTY, plant);
    expect(wear.reverse.worstPole?.phase).toBe('B');
    expectWithin(wear.reverse.worstPole?.factor, 1.5, EXACT, 'factor');
    expectWithin(wear.reverse.operations?.value, 1e5, EXACT, 'value');
    expectWithin(wear.reverse.operations?.low, 5e4 / 1.5, EXACT, 'low');
    expectWithin(wear.reverse.operations?.high, 2e5, EXACT, 'high');
  });
});

describe('replacement', () => {
  it('comes so many days after the contacts were changed', () => {
    // 100 000 operations at 250 a day: 400 days; 2024 is a leap year
    const wear = wearOf({
      ...PLUGGING_DUTY,
      operationsPerDay: 250,
      contactsChanged: '2024-01-01',
      operationsSince: 30_000,
    });
    expect(wear.reverse.replacement).toEqual({ value: '2025-02-04', low: '2024-07-19', high: '2026-03-11' });
    expectWithin(wear.reverse.operationsLeft?.value, 7e4, EXACT, 'left');
    expectWithin(wear.reverse.operationsLeft?.low, 2e4, EXACT, 'left at least');
  });

  it('leaves nothing once more operations are done than the contacts last', () => {
    const wear = wearOf({ ...PLUGGING_DUTY, operationsSince: 120_000 });
    expect(wear.reverse.operationsLeft?.value).toBe(0);
    expectWithin(wear.reverse.operationsLeft?.high, 8e4, EXACT, 'left at most');
  });

  it('beyond the year 9999 has no date', () => {
    const wear = wearOf({ ...PLUGGING_DUTY, operationsPerDay: 0.01, contactsChanged: '2024-01-01' });
    expect(wear.reverse.replacement?.value).toBeNull();
  });

  it.each([
    [{ operationsPerDay: 250 }, 'duty.contactsChanged is missing'],
    [{ contactsChanged: '2024-01-01' }, 'duty.operationsPerDay is missing'],
    [{}, 'duty.operationsPerDay and duty.contactsChanged are missing'],
  ])('is not known where data lack: %o', (given, missing) => {
    const wear = wearOf({ ...PLUGGING_DUTY, ...given });
    expect(wear.reverse.replacement).toBeNull();
    expect(wear.reverse.missing).toContain(`the date of replacement is not known because ${missing}`);
  });
});

describe('mechanical wear', () => {
  it('counts closings of contactors, interlock and switch', () => {
    const device = { ...STATED_CONTACTOR, mechanicalLife: 1e7 };
    const lives = { interlockMechanicalLife: 3e6, switchMechanicalLife: 2e6 };
    const duty = { ...PLUGGING_DUTY, pluggingShare: 0.5, inchingShare: 0.25 };
    const wear = contactWear(START_AND_PLUG, pairOf(device, lives), duty, plant);
    expectWithin(wear.forward.mechanicalOperations, 1e7, EXACT, 'forward closes every time');
    expectWithin(wear.reverse.mechanicalOperations, 2e7, EXACT, 'reverse closes every second time');
    expectWithin(wear.interlockOperations, 2e6, EXACT, 'interlock moves 1.5 times');
    expectWithin(wear.switchOperations, 2e6 / 0.75, EXACT, 'switch closes at every run-up');
  });

  it('is not judged where the life is missing', () => {
    const wear = wearOf(PLUGGING_DUTY);
    expect(wear.forward.mechanicalOperations).toBeNull();
    expect(wear.interlockOperations).toBeNull();
    expect(wear.switchOperations).toBeNull();
    expect(wear.forward.missing).toContain('mechanical wear is not judged because mechanicalLife is missing');
  });
});

describe('what is not known', () => {
  it('without a duty is the life, not the wear of each event', () => {
    const wear = wearOf(null);
    expect(wear.forward.operations).toBeNull();
    expect(wear.governing).toBeNull();
    expectWithin(wear.forward.perEvent.stop, 1e-6, EXACT, 'a stop');
    expectWithin(wear.reverse.perEvent.plugStop, 1e-5, EXACT, 'a plug stop');
    expectWithin(wear.reverse.perEvent.stop, 0, { absolute: 0 }, 'a stop of the other contactor');
    expect(wear.forward.missing).toContain(
      'operations to replacement are not known because the section duty is missing',
    );
  });

  it('in a run without a plug stop is what plugging breaks, and then no contactor governs', () => {
    const means = { ...START_AND_PLUG, breakings: [breaking('forward', 10, 68)] };
    const wear = contactWear(means, pairOf(STATED_CONTACTOR), PLUGGING_DUTY, plant);
    expect(wear.reverse.operations).toBeNull();
    expect(wear.reverse.wearUnknown).toBe(true);
    expect(wear.governing).toBeNull();
    expect(wear.reverse.missing[0]).toContain('breaking at the end of plugging is not judged because');
  });

  it('after a reversal that is left to coast is what plugging breaks: that is a running current', () => {
    const coasting = { ...breaking('reverse', 10, 68), command: 'coast' as const };
    const means = { ...START_AND_PLUG, breakings: [breaking('forward', 10, 68), coasting] };
    const wear = contactWear(means, pairOf(STATED_CONTACTOR), PLUGGING_DUTY, plant);
    expect(wear.reverse.perEvent.plugStop).toBeNull();
    expectWithin(wear.reverse.perEvent.reversal, 0.5e-6, EXACT, 'a reversal');
  });

  it('of ideal poles is everything that arcs would wear', () => {
    const means = {
      ...START_AND_PLUG,
      breakings: [breaking('forward', null, 68), breaking('reverse', null, 400)],
    };
    const wear = contactWear(means, pairOf(STATED_CONTACTOR), PLUGGING_DUTY, plant);
    expect(wear.forward.operations).toBeNull();
    expect(wear.forward.missing[0]).toContain('burn no arc');
  });
});

describe('contactors of which nothing is known', () => {
  it('are judged by the generic curve, and marked', () => {
    const wear = contactWear(START_AND_PLUG, pairOf(genericContactor(10)), PLUGGING_DUTY, plant);
    expectWithin(wear.forward.operations?.value, 1.2e6, EXACT, 'forward');
    expect(wear.forward.basis.generic).toBe(true);
    expect(genericContactor(10)).toEqual({ ...BARE_CONTACTOR, ratedVoltage: null });
  });
});

describe('most operations per hour', () => {
  it('are those of the category recommended', () => {
    const device = { ...STATED_CONTACTOR, operationsPerHourAc3: 600, operationsPerHourAc4: 120 };
    const wear = contactWear(START_AND_PLUG, pairOf(device), PLUGGING_DUTY, plant);
    expect(wear.forward.mostOperationsPerHour).toBe(600);
    expect(wear.reverse.mostOperationsPerHour).toBe(120);
  });

  it.each([
    [61, true],
    [59, false],
  ])('%d plug stops an hour: plugging and jogging duty %s', (operationsPerHour, often) => {
    const wear = wearOf({ ...PLUGGING_DUTY, operationsPerHour });
    expect(wear.reverse.categoryReason.includes('plugging and jogging duty')).toBe(often);
  });
});
