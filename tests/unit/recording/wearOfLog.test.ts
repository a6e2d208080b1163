import { describe, expect, it } from 'vitest';
import { contactWear } from '../../../src/assess/wear/contactWear.ts';
import { parseOperationLog } from '../../../src/recording/operationLog.ts';
import { wearOfLog } from '../../../src/recording/wearOfLog.ts';
import {
  breaking,
  PLUGGING_DUTY,
  pairOf,
  START_AND_PLUG,
  STATED_CONTACTOR,
} from '../../support/contactors.ts';
import { scenarioOf } from '../../support/scenarios.ts';
import { KRAUSE } from '../../support/textbookMachines.ts';
import { expectWithin } from '../../support/tolerance.ts';

const EXACT = { relative: 1e-9 };
const plant = scenarioOf(KRAUSE.hp3);
/** A stop or plug stop costs the forward contactor 1e-6, a plug stop the reversing one 1e-5. */
const wear = contactWear(START_AND_PLUG, pairOf(STATED_CONTACTOR), PLUGGING_DUTY, plant);
const logOf = (...lines: string[]) => parseOperationLog(`time,operation\n${lines.join('\n')}\n`, 'log.csv');
const many = (count: number, line: string) => Array.from({ length: count }, () => line);

describe('the wear of a log', () => {
  // 100 days, 400 plug stops and 600 normal stops
  const log = logOf(...many(400, '2026-01-01,plug stop'), ...many(600, '2026-04-11,coast'));
  const result = wearOfLog(log, wear, null);

  it('adds up what each operation costs each contactor', () => {
    expectWithin(result.contactors.forward.used?.value, 1000e-6, EXACT, 'forward');
    expectWithin(result.contactors.reverse.used?.value, 400e-5, EXACT, 'reverse');
    expectWithin(result.contactors.reverse.left?.value, 1 - 400e-5, EXACT, 'left');
    expect(result.counts).toEqual({ start: 0, stop: 600, plugStop: 400, reversal: 0, inch: 0 });
    expect([result.first, result.last]).toEqual(['2026-01-01', '2026-04-11']);
  });

  it('has the range of the lives the other way round: a short life is much wear', () => {
    expectWithin(result.contactors.reverse.used?.low, 200e-5, EXACT, 'low');
    expectWithin(result.contactors.reverse.used?.high, 800e-5, EXACT, 'high');
  });

  it('goes on at the log’s own rhythm to the day when nothing is left', () => {
    // 0.004 in 100 days: the other 0.996 take 24 900 days; 0.008: 12 400; 0.002: 49 900. From 2026-04-11 (days by another calendar program).
    expect(result.contactors.reverse.replacement).toEqual({
      value: '2094-06-13',
      low: '2060-03-23',
      high: '2162-11-24',
    });
  });

  it('says that make erosion is not in it, and that the contacts count as new', () => {
    expect(result.contactors.forward.missing).toContain(
      'make erosion is not judged because the bounce time is missing',
    );
    expect(result.remarks).toContain('the contacts are taken as new at the first line of the log');
  });
});

describe('a log that is older than the contacts', () => {
  it('counts from the day they were changed, over the time since that day', () => {
    const log = logOf('2025-06-01,plug stop', ...many(10, '2026-01-11,plug stop'));
    const result = wearOfLog(log, wear, '2026-01-01');
    expectWithin(result.contactors.reverse.used?.value, 10e-5, EXACT, 'used');
    expect(result.remarks.join()).toContain('1 before that day are left out');
    // 1e-4 in ten days: 99 990 days more from 2026-01-11, in 2299
    expect(result.contactors.reverse.replacement?.value?.slice(0, 4)).toBe('2299');
  });
});

describe('contacts that are worn out by the log', () => {
  it('have nothing left, and their day is that of the last operation', () => {
    const few = contactWear(
      START_AND_PLUG,
      pairOf({ ...STATED_CONTACTOR, lifeAc3: 40, lifeAc4: 4 }),
      PLUGGING_DUTY,
      plant,
    );
    const result = wearOfLog(logOf('2026-01-01,plug stop', ...many(7, '2026-01-05,plug stop')), few, null);
    expectWithin(result.contactors.reverse.used?.value, 2, EXACT, 'used');
    expect(result.contactors.reverse.left?.value).toBe(0);
    expect(result.contactors.reverse.replacement?.value).toBe('2026-01-05');
  });
});

describe('what a log does not show', () => {
  it('of one day has no rhythm: no date, and the reason', () => {
    const result = wearOfLog(logOf('2026-01-01,plug stop'), wear, null);
    expect(result.contactors.reverse.replacement).toBeNull();
    expect(result.contactors.reverse.missing).toContain(
      'the date is not known because the log covers no time',
    );
  });

  it('without an operation since the change is unknown, not zero', () => {
    const result = wearOfLog(logOf('2025-01-01,start'), wear, '2026-01-01');
    expect(result.contactors.forward.used).toBeNull();
    expect(result.contactors.forward.missing[0]).toBe('wear is not known because an operation is missing');
  });

  it('with a kind of operation whose wear is not known is unknown, and says which', () => {
    const means = { ...START_AND_PLUG, breakings: [breaking('forward', 10, 68)] };
    const partial = contactWear(means, pairOf(STATED_CONTACTOR), PLUGGING_DUTY, plant);
    const result = wearOfLog(logOf('2026-01-01,plug stop', '2026-01-02,plug stop'), partial, null);
    expect(result.contactors.reverse.used).toBeNull();
    expect(result.contactors.reverse.missing[0]).toBe(
      'wear is not known because the wear of plug stops is missing',
    );
    expectWithin(result.contactors.forward.used?.value, 2e-6, EXACT, 'forward');
  });

  it('that wears a contactor by nothing sets no date for it', () => {
    const result = wearOfLog(logOf('2026-01-01,coast', '2026-01-02,coast'), wear, null);
    expectWithin(result.contactors.reverse.used?.value, 0, { absolute: 0 }, 'used');
    expect(result.contactors.reverse.replacement).toBeNull();
  });
});
