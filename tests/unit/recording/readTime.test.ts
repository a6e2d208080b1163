import { describe, expect, it } from 'vitest';
import { readTime } from '../../../src/recording/readTime.ts';

const DAY = 86_400;

describe('a time of a log', () => {
  // Days since 1970-01-01: 2026-03-01 is 20513 (56 years with 14 leap days before 2026: 20454, then 31 + 28 days)
  it.each([
    ['1970-01-01', 0],
    ['2026-03-01', 20513 * DAY],
    ['2026-03-01T06:30', 20513 * DAY + 23_400],
    ['2026-03-01 06:30', 20513 * DAY + 23_400],
    ['2026-03-01T06:30:15', 20513 * DAY + 23_415],
    ['2026-03-01T06:30:15.250', 20513 * DAY + 23_415.25],
    ['2026-03-01T06:30:15,5', 20513 * DAY + 23_415.5],
    ['2026-03-01T06:30Z', 20513 * DAY + 23_400],
    ['2026-03-01T06:30+02:00', 20513 * DAY + 23_400 - 7200],
    ['2026-03-01T06:30-0530', 20513 * DAY + 23_400 + 19_800],
    ['2026-03-01T24:00', 20514 * DAY],
    ['2024-02-29', 19782 * DAY],
  ])('%s', (text, seconds) => {
    expect(readTime(text)?.seconds).toBe(seconds);
  });

  it.each([
    '2026-02-29',
    '2026-13-01',
    '2026-00-10',
    '2026-1-1',
    '01.03.2026',
    '03/01/2026',
    '2026-03-01T25:00',
    '2026-03-01T24:01',
    '2026-03-01T06:60',
    '2026-03-01T06:30:61',
    '2026-03-01T06',
    '2026-03-01T06:30+25:00',
    '2026-03-01T06:30+01:75',
    '20260301',
    'now',
    '',
  ])('%o is none', (text) => {
    expect(readTime(text)).toBeNull();
  });

  it('knows a day alone from a day with its time', () => {
    expect(readTime('2026-03-01')?.dayOnly).toBe(true);
    expect(readTime('2026-03-01T00:00')?.dayOnly).toBe(false);
  });
});
