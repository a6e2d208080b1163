import { describe, expect, it } from 'vitest';
import type { StarterData } from '../../../../src/scenario/scenario.ts';
import { controlCircuit } from '../../../../src/starter/control/schemes.ts';
import {
  checkCircuit,
  checkInterlocks,
  everyPropertyHolds,
  type InterlockReport,
} from '../../../../src/starter/interlocks/checkInterlocks.ts';
import { IMPROVED_CONTROLS, PLAIN_CONTROLS } from '../../../../src/starter/interlocks/plainAndImproved.ts';
import type { PropertyId } from '../../../../src/starter/interlocks/property.ts';
import { controlOf } from './controlOf.ts';

const starter: StarterData = {
  closingTime: 0.02,
  openingTime: 0.01,
  closingScatter: [0, 0, 0],
  openingScatter: [0, 0, 0],
  changeoverDelay: 0,
  changeoverGivenAs: 'default',
  poles: 'arcing',
  minimumArcingTime: 0,
  exchangedPhases: 'AB',
  zeroSpeedSwitch: { dropOutSpeed: 5, pickUpSpeed: 10, delay: 0 },
};

const verdictOf = (report: InterlockReport | null, id: PropertyId) =>
  report?.verdicts.find(({ property }) => property === id)?.verdict.kind;

describe('the check of a starter', () => {
  it('is none where it has no control circuit', () => {
    expect(checkInterlocks(starter)).toBeNull();
  });

  it("sees its switch's lockout and leaves its own faults out", () => {
    const control = controlOf({ scheme: 'plugStop' });
    const faults = [{ kind: 'zeroSpeedSwitch', mode: 'stuckClosed' }] as const;
    const report = checkInterlocks({ ...starter, control, faults });
    expect(verdictOf(report, 'noStartByTurning')).toBe('broken');
    expect(verdictOf(report, 'brakeEndsWithSwitch')).toBe('holds');
    const zeroSpeedSwitch = { dropOutSpeed: 5, pickUpSpeed: 10, delay: 0, lockout: true } as const;
    const locked = checkInterlocks({ ...starter, control, zeroSpeedSwitch });
    expect(verdictOf(locked, 'noStartByTurning')).toBe('dependsOnSpeed');
    expect(verdictOf(locked, 'noStartAfterPowerReturns')).toBe('broken');
  });

  it('asks nothing of an overload relay or a mechanical interlock that is not there', () => {
    const control = controlOf({ scheme: 'direct', overload: null, mechanicalInterlock: false });
    const report = checkInterlocks({ ...starter, control });
    expect(verdictOf(report, 'overloadDropsBoth')).toBe('doesNotApply');
    const kinds = report?.faults.map(({ fault }) => fault.kind);
    expect(kinds).not.toContain('overloadNeverTrips');
    expect(kinds).not.toContain('mechanicalInterlockMissing');
  });
});

describe('the schemes', () => {
  const passes = (control: (typeof PLAIN_CONTROLS)[number]) =>
    everyPropertyHolds(checkCircuit(controlCircuit(control, false), control, false));

  it('in their plain form all break something', () => {
    expect(PLAIN_CONTROLS.map(({ scheme }) => scheme).sort()).toEqual(
      ['antiPlugging', 'direct', 'jog', 'plugStop', 'plugStopBoth', 'throughStop'].sort(),
    );
    expect(PLAIN_CONTROLS.filter(passes)).toEqual([]);
  });

  it('with the relays that improve them break nothing, but for two buttons at once under the contact interlock', () => {
    const best = IMPROVED_CONTROLS.filter(({ readyRelay }) => readyRelay);
    expect(best.length).toBe(PLAIN_CONTROLS.length);
    expect(best.filter((control) => !passes(control)).map(({ scheme }) => scheme)).toEqual(['throughStop']);
  });
});
