import { describe, expect, it } from 'vitest';
import {
  cycleDuration,
  cyclicDurationFactor,
  dutyCycle,
  mostPerHour,
  runningOf,
} from '../../../../src/assess/heat/dutyCycle.ts';
import { dutyType } from '../../../../src/assess/heat/dutyType.ts';
import type { OperationHeat } from '../../../../src/assess/heat/heat.ts';
import type { DutyData } from '../../../../src/scenario/scenario.ts';
import { scenarioOf } from '../../../support/scenarios.ts';
import { KRAUSE } from '../../../support/textbookMachines.ts';
import { pulse, SOME_HEAT } from '../../../support/thermalModels.ts';
import { expectAllWithin, expectWithin } from '../../../support/tolerance.ts';

const EXACT = { relative: 1e-12 };

/** Start 0.8 s, stop 0.5 s. */
const COASTING: OperationHeat = {
  ...SOME_HEAT,
  stop: pulse({ frame: 30, duration: 20 }),
  stopKind: 'coast',
};

const DUTY: DutyData = {
  cycle: 'startPlugStop',
  operationsPerHour: null,
  operationsPerDay: null,
  runningTime: null,
  cyclicDurationFactor: null,
  pluggingShare: 1,
  inchingShare: 0,
  contactsChanged: null,
  operationsSince: null,
};

describe('a cycle', () => {
  it('with a running time has the rest that is left of the hour', () => {
    const cycle = dutyCycle(SOME_HEAT, 'startPlugStop', { kind: 'time', time: 40 }, 36);
    expect(cycle.map(({ name }) => name)).toEqual(['start', 'running', 'stop', 'rest']);
    expectAllWithin(
      cycle.map(({ pulse: { duration } }) => duration),
      [0.8, 40, 0.5, 58.7],
      EXACT,
      'durations',
    );
    expectAllWithin(
      cycle.map(({ pulse: { winding } }) => winding),
      [4000, 10_000, 9000, 0],
      EXACT,
      'heat of the winding',
    );
    expect(cycle.map(({ cooling }) => cooling)).toEqual([
      'standstill',
      'running',
      'standstill',
      'standstill',
    ]);
    expectWithin(cyclicDurationFactor(cycle, 'startPlugStop'), 41.3 / 100, EXACT, 'factor');
  });

  it('with a cyclic duration factor counts start and stop to it', () => {
    const cycle = dutyCycle(SOME_HEAT, 'startPlugStop', { kind: 'factor', factor: 0.4 }, 36);
    expectWithin(cycle[1]?.pulse.duration, 38.7, EXACT, 'running');
    expectWithin(cyclicDurationFactor(cycle, 'startPlugStop'), 0.4, EXACT, 'factor');
  });

  it('that ends by coasting does not count the coasting', () => {
    const cycle = dutyCycle(COASTING, 'startCoast', { kind: 'factor', factor: 0.4 }, 36);
    expectWithin(cycle[1]?.pulse.duration, 39.2, EXACT, 'running');
    expectWithin(cyclicDurationFactor(cycle, 'startCoast'), 0.4, EXACT, 'factor');
    expectWithin(cycleDuration(cycle), 100, EXACT, 'cycle');
  });

  it('of start and coast from a run that plugs leaves the stop out', () => {
    const cycle = dutyCycle(SOME_HEAT, 'startCoast', { kind: 'time', time: 40 }, 36);
    expect(cycle.map(({ name }) => name)).toEqual(['start', 'running', 'rest']);
  });

  it('of start and coast has no rest shorter than the run-down that the run does not show', () => {
    const belt: OperationHeat = { ...SOME_HEAT, coastTime: 5 };
    const running = { kind: 'time', time: 10 } as const;
    // Start 0.8 s, running 10 s, coasting 5 s
    const most = mostPerHour(belt, 'startCoast', running);
    expectWithin(most, 3600 / 15.8, EXACT, 'most per hour');
    const durations = (perHour: number) =>
      dutyCycle(belt, 'startCoast', running, perHour).map(({ pulse: { duration } }) => duration);
    expectAllWithin(durations(most), [0.8, 10, 5], EXACT, 'as often as there is time for');
    expectAllWithin(durations(36), [0.8, 10, 89.2], EXACT, 'coasting is part of a longer rest');
    expectAllWithin(durations(Number.POSITIVE_INFINITY), [0.8, 10, 5], EXACT, 'one right after the other');
    expectWithin(mostPerHour(belt, 'startPlugStop', running), 3600 / 11.3, EXACT, 'plugging does not coast');
  });

  it('of a run that is cut off while it coasts leaves the rest of the run-down its time', () => {
    const cut: OperationHeat = { ...COASTING, coastTime: 32 };
    const running = { kind: 'time', time: 10 } as const;
    expectWithin(mostPerHour(cut, 'startCoast', running), 3600 / 42.8, EXACT, 'most per hour');
  });

  it('with a cyclic duration factor coasts within the part in which the motor is off', () => {
    for (const heat of [COASTING, { ...SOME_HEAT, coastTime: 20 }]) {
      const running = { kind: 'factor', factor: 0.4 } as const;
      const most = mostPerHour(heat, 'startCoast', running);
      // 20 s are 60 % of the cycle
      expectWithin(most, (3600 * 0.6) / 20, EXACT, 'most per hour');
      const cycle = dutyCycle(heat, 'startCoast', running, most);
      expectWithin(cycleDuration(cycle), 20 / 0.6, EXACT, 'cycle');
      expectWithin(cyclicDurationFactor(cycle, 'startCoast'), 0.4, EXACT, 'factor');
    }
  });

  it('of full reversals has no rest, and a reversal is stop and start where the run ends at rest', () => {
    const cycle = dutyCycle(SOME_HEAT, 'fullReversal', { kind: 'factor', factor: 1 }, 36);
    expect(cycle.map(({ name }) => name)).toEqual(['reversal', 'running']);
    expectWithin(cycle[0]?.pulse.cage, 19_000, EXACT, 'heat of the cage');
    expectWithin(cycle[1]?.pulse.duration, 98.7, EXACT, 'running');
  });

  it('of full reversals takes the reversal of the run, and a stop is its first part', () => {
    const reversing: OperationHeat = {
      ...SOME_HEAT,
      stop: pulse({ cage: 16_000, duration: 1.1 }),
      braking: pulse({ cage: 12_000, duration: 0.6 }),
      stopKind: 'reversal',
    };
    const running = { kind: 'time', time: 40 } as const;
    expect(dutyCycle(reversing, 'fullReversal', running, 36)[0]?.pulse.cage).toBe(16_000);
    expect(dutyCycle(reversing, 'startPlugStop', running, 36)[2]?.pulse.cage).toBe(12_000);
  });

  it('has room for no more than its parts take', () => {
    expectWithin(
      mostPerHour(SOME_HEAT, 'startPlugStop', { kind: 'time', time: 40 }),
      3600 / 41.3,
      EXACT,
      'with a running time',
    );
    expectWithin(
      mostPerHour(SOME_HEAT, 'startPlugStop', { kind: 'factor', factor: 0.4 }),
      (3600 * 0.4) / 1.3,
      EXACT,
      'with a factor',
    );
  });
});

describe('running', () => {
  it('is the stated time before the factor', () => {
    expect(runningOf({ ...DUTY, runningTime: 12, cyclicDurationFactor: 0.4 }, 'startCoast')).toEqual({
      kind: 'time',
      time: 12,
    });
    expect(runningOf({ ...DUTY, cyclicDurationFactor: 0.4 }, 'startCoast')).toEqual({
      kind: 'factor',
      factor: 0.4,
    });
  });

  it('that fills the cycle leaves no time to coast', () => {
    const always = { ...DUTY, cyclicDurationFactor: 1 };
    expect(runningOf(always, 'startCoast')).toMatch(/no time to coast/);
    expect(runningOf(always, 'startPlugStop')).toEqual({ kind: 'factor', factor: 1 });
  });

  it('is missing where neither is stated, except between full reversals', () => {
    expect(runningOf(DUTY, 'startPlugStop')).toMatch(/running time .* is missing/);
    expect(runningOf(undefined, 'startCoast')).toMatch(/running time .* is missing/);
    expect(runningOf(undefined, 'fullReversal')).toEqual({ kind: 'factor', factor: 1 });
  });
});

describe('the duty type', () => {
  // Rotor 0.089 kg·m², load 0.5 kg·m² behind a gear of ratio 2: 0.125 at the motor, FI = 0.214/0.089 = 2.404
  const scenario = scenarioOf(KRAUSE.hp3, {
    load: { inertia: 0.5, gear: { ratio: 2, efficiency: 1, backwardEfficiency: 1 } },
  });

  it.each([
    ['startCoast', 'S4, 40 %, FI 2.4', 'intermittent periodic duty with starting'],
    ['startPlugStop', 'S5, 40 %, FI 2.4', 'intermittent periodic duty with electric braking'],
    ['fullReversal', 'S7, FI 2.4', 'continuous-operation periodic duty with electric braking'],
  ] as const)('of %s is written %s', (kind, designation, words) => {
    const type = dutyType(scenario, kind, 0.4);
    expect(type.designation).toBe(designation);
    expect(type.words).toBe(words);
    expectWithin(type.loadInertia, 0.125, EXACT, 'load inertia at the motor');
  });

  it('leaves out a factor that is not known', () => {
    expect(dutyType(scenario, 'startPlugStop', null).designation).toBe('S5, FI 2.4');
  });
});
