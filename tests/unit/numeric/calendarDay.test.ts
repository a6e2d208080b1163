import { describe, expect, it } from 'vitest';
import { dateOfDay, dayOfDate, quarterOfDay, yearOfDay } from '../../../src/numeric/calendarDay.ts';

/** Milliseconds of a day. */
const DAY = 86_400_000;

describe('days of the calendar', () => {
  it.each([
    ['1970-01-01', 0],
    ['1969-12-31', -1],
    // Thirty years with the seven leap days of 1972 … 1996.
    ['2000-01-01', 30 * 365 + 7],
    ['2000-02-29', 30 * 365 + 7 + 59],
    ['2000-03-01', 30 * 365 + 7 + 60],
  ])('%s is day %d', (date, day) => {
    expect(dayOfDate(date)).toBe(day);
    expect(dateOfDay(day)).toBe(date);
  });

  it('agree with the calendar of the language on every day of five centuries', () => {
    for (let day = Date.UTC(1799, 11, 31) / DAY; day <= Date.UTC(2300, 0, 1) / DAY; day++) {
      const date = new Date(day * DAY).toISOString().slice(0, 10);
      if (dateOfDay(day) !== date || dayOfDate(date) !== day)
        expect.fail(`${date} is day ${dayOfDate(date)}`);
    }
  });

  it.each([
    '2026-02-29',
    '2100-02-29',
    '2026-04-31',
    '2026-13-01',
    '2026-00-10',
    '2026-01-00',
    '2026-1-01',
    '01.02.2026',
    '2026-01-01T00:00',
    '',
  ])('"%s" is no date', (text) => {
    expect(dayOfDate(text)).toBeNull();
  });

  it('a year of the fourth century has its leap day', () => {
    expect(dateOfDay(dayOfDate('2400-02-28')! + 1)).toBe('2400-02-29');
    expect(dateOfDay(dayOfDate('2100-02-28')! + 1)).toBe('2100-03-01');
  });

  it.each([
    ['2026-01-01', 2026, 1],
    ['2026-03-31', 2026, 1],
    ['2026-04-01', 2026, 2],
    ['2026-06-30', 2026, 2],
    ['2026-07-01', 2026, 3],
    ['2026-09-30', 2026, 3],
    ['2026-10-01', 2026, 4],
    ['2026-12-31', 2026, 4],
    ['2028-02-29', 2028, 1],
  ])('%s is in quarter %d Q%d', (date, year, quarter) => {
    expect(quarterOfDay(dayOfDate(date)!)).toEqual({ year, quarter });
    expect(yearOfDay(dayOfDate(date)!)).toBe(year);
  });
});
