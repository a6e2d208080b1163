/** What a stop other than plugging does not keep: each limit on both sides, not applying, and unknown. */
import { describe, expect, it } from 'vitest';
import type { RunResult } from '../../../src/measure/result.ts';
import type { StopFigures } from '../../../src/measure/stopFigures.ts';
import type { DutyData, LimitsData } from '../../../src/scenario/scenario.ts';
import type { StopCost } from '../../../src/survey/alternatives/alternative.ts';
import { limitsMissed } from '../../../src/survey/alternatives/limitsMissed.ts';
import { fakeRun } from '../report/fakeRun.ts';

const FIGURES: StopFigures = {
  command: 1,
  time: 2,
  reachesZero: true,
  angle: 30,
  peakCurrent: 100,
  peakTorque: 50,
  couplingTorque: null,
  statorHeat: 1,
  rotorHeat: 1,
  lineResistorHeat: 0,
};
const COST: StopCost = {
  operationsPerHour: 20,
  binding: 'winding',
  contactLife: 1000,
  wearsFirst: 'forward',
};

function missed(
  limits: Partial<LimitsData>,
  figures: Partial<StopFigures> = {},
  perHour: number | null = null,
) {
  const run = fakeRun();
  const scenario = {
    ...run.scenario,
    limits: limits as LimitsData,
    duty: { operationsPerHour: perHour } as DutyData,
  };
  const result: RunResult = { ...run, scenario };
  return limitsMissed(result, { ...FIGURES, ...figures }, COST);
}

describe('a limit that another way to stop does not keep', () => {
  it.each<[keyof LimitsData, number, number, string]>([
    ['stopTime', 1.9, 2.1, 'time from the command to zero speed'],
    ['stopAngle', 29, 31, 'angle turned until zero speed'],
    // √2 times the setting is the limit of the crest: 100 A are 70.7 A.
    ['instantaneousTrip', 70, 71, 'crest of the current'],
    ['brakeTorque', 49, 51, 'torque of the brake'],
    ['contactLife', 1001, 999, 'operations until the contacts are to be replaced'],
  ])('is told of %s', (key, tooTight, kept, words) => {
    expect(missed({ [key]: tooTight })).toEqual([words]);
    expect(missed({ [key]: kept })).toEqual([]);
    expect(missed({ [key]: 'none' })).toEqual([]);
    expect(missed({ [key]: null })).toEqual([]);
  });

  it('is told of operations per hour', () => {
    expect(missed({}, {}, 21)).toEqual(['permissible operations per hour']);
    expect(missed({}, {}, 19)).toEqual([]);
    expect(missed({}, {}, null)).toEqual([]);
  });

  it('counts a stop that never comes as too late', () => {
    expect(missed({ stopTime: 100 }, { time: null, angle: null })).toEqual([
      'time from the command to zero speed',
    ]);
  });
});
