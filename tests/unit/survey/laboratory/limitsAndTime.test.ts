import { describe, expect, it } from 'vitest';
import { shaftTorque } from '../../../../src/assess/stop/shaftTorque.ts';
import { parseScenario, type Scenario, simulate } from '../../../../src/index.ts';
import type { StepKey } from '../../../../src/survey/laboratory/laboratory.ts';
import { leastTimeOf } from '../../../../src/survey/laboratory/leastTime.ts';
import { limitsPassed, shaftTorques } from '../../../../src/survey/laboratory/limits.ts';
import { type Pause, pausesOf } from '../../../../src/survey/laboratory/pause.ts';
import type { QuantityKey } from '../../../../src/survey/laboratory/quantities.ts';
import { exampleText } from '../../../support/examples.ts';

const set = parseScenario(exampleText('what-should-the-laboratory-set-show.yaml'));
const limits = set.limits!;
const run = simulate(set);

describe('limits of the scenario', () => {
  /** Upper ends of a set of no name. */
  const ranges = new Map<QuantityKey, { high: number }>([
    ['startPeakCurrent', { high: 20 }],
    ['plugPeakCurrent', { high: 42 }],
    ['stopTimeFromTouch', { high: 1.04 }],
    ['partingToTouch', { high: 0.0255 }],
    ['stopRevolutions', { high: 13 }],
    ['creepAngle', { high: 1.3 }],
    ['startShaftTorque', { high: 60 }],
    ['plugShaftTorque', { high: 170 }],
  ]);
  const keys = (step: StepKey, changes: Partial<typeof limits>) => {
    const scenario: Scenario = { ...set, limits: { ...limits, ...changes } };
    return limitsPassed(step, scenario, ranges).map(({ key }) => key);
  };
  const STEPS = ['direction', 'start', 'plugStop', 'creep', 'reversal'] as const;
  const where = (changes: Partial<typeof limits>) =>
    STEPS.flatMap((step) => keys(step, changes).map((key) => `${step}: ${key}`));

  it('are kept as the example states them', () => {
    expect(where({})).toEqual([]);
  });

  it('of an instantaneous trip are crests: √2 times the setting', () => {
    expect(where({ instantaneousTrip: 29.7 })).toEqual([]);
    expect(where({ instantaneousTrip: 29.6 })).toEqual([
      'plugStop: instantaneousTrip',
      'reversal: instantaneousTrip',
    ]);
    expect(where({ instantaneousTrip: 14.1 })).toHaveLength(4);
    const [first] = limitsPassed(
      'plugStop',
      { ...set, limits: { ...limits, instantaneousTrip: 20 } },
      ranges,
    );
    expect(first).toMatchObject({ value: 42, unit: 'A' });
    expect(first!.most).toBeCloseTo(28.284, 3);
  });

  it('of time count from the command: opening and dead time come before the touch', () => {
    expect(where({ stopTime: 1.075 })).toEqual([]);
    expect(where({ stopTime: 1.074 })).toEqual(['plugStop: stopTime']);
    expect(where({ stopAngle: 2 * Math.PI * 12.9 })).toEqual(['plugStop: stopAngle']);
  });

  it('of torque are those of the weakest part, and creep has its own', () => {
    expect(where({ couplingTorque: 169, keyTorque: 100, gearboxTorque: 'none' })).toEqual([
      'plugStop: keyTorque',
      'reversal: keyTorque',
    ]);
    expect(where({ couplingTorque: 59 })).toHaveLength(4);
    expect(where({ reverseCreep: 1.2 })).toEqual(['creep: reverseCreep']);
  });

  it('of torque are compared with what the judgement of the same run finds', () => {
    const { metrics } = run;
    const { startShaftTorque = 0, plugShaftTorque = 0 } = shaftTorques(set, {
      start: metrics,
      plug: metrics,
    });
    expect(plugShaftTorque / shaftTorque(run).value!).toBeCloseTo(1, 1);
    expect(startShaftTorque).toBeLessThan(plugShaftTorque);
  });
});

describe('the time of the trials', () => {
  const pause = (time: number, perHour: number): Pause => ({
    time,
    perHour,
    permissible: 2 * perHour,
    bound: 'the winding',
    running: 5,
    untilTrip: null,
    untilTripWithPause: null,
    untilHot: null,
  });
  // 72 an hour are 50 s each, 43 of them pause, which is kept as 45.
  const pauses = { plugStop: pause(43, 72), reversal: pause(61, 50) };
  const ranges = new Map<QuantityKey, { predicted: number }>([
    ['startTime', { predicted: 0.5 }],
    ['runDownTime', { predicted: 20 }],
  ]);

  it('is that of all trials, each with its pause as it is kept', () => {
    const time = leastTimeOf(['runDown', 'start', 'plugStop', 'creep', 'reversal'], ranges, pauses, 4);
    if (typeof time === 'string') throw new Error(time);
    expect(time.parts).toEqual([
      { step: 'runDown', trials: 3, each: 70.5 },
      { step: 'start', trials: 1, each: 70.5 },
      { step: 'plugStop', trials: 10, each: 52 },
      { step: 'creep', trials: 4, each: 52 },
      { step: 'reversal', trials: 1, each: 72 - 61 + 65 + 20 },
    ]);
    expect(time.total).toBeCloseTo(4 * 70.5 + 14 * 52 + 96, 9);
  });

  it('is of the steps there are, and not worked out without a pause that they need', () => {
    const start = leastTimeOf(['start'], ranges, { ...pauses, reversal: 'no duty' }, 0);
    expect(start).toMatchObject({ total: 70.5 });
    expect(leastTimeOf(['start', 'reversal'], ranges, { ...pauses, reversal: 'no duty' }, 0)).toBe('no duty');
  });
});

it('an overload relay that trips in spite of the pause is found', () => {
  const withRelay = (setting: number) => {
    const protection = { curves: [], overload: { setting, tripClass: '10' as const } };
    const { plugStop } = pausesOf({ ...run, scenario: { ...set, protection } }, false);
    if (typeof plugStop === 'string') throw new Error(plugStop);
    return plugStop.untilTripWithPause;
  };
  expect(withRelay(2.7)).toBeNull();
  const tight = withRelay(1.6);
  expect(tight).toBeGreaterThan(0);
  expect(tight).toBeLessThan(20);
});
