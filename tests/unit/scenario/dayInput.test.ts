import { expect, it } from 'vitest';
import { isDay } from '../../../src/scenario/dayInput.ts';

const two = (value: number) => String(value).padStart(2, '0');

/** True where the calendar of the runtime, asked for that day, answers with the same day. */
function existsInCalendar(year: number, month: number, day: number): boolean {
  const asked = new Date(Date.UTC(year, month - 1, day));
  return asked.getUTCFullYear() === year && asked.getUTCMonth() === month - 1 && asked.getUTCDate() === day;
}

it('exactly the days that exist are days, over four centuries with their leap years', () => {
  const wrong: string[] = [];
  // Century years with and without a leap day, the years around them, and both ends of the range.
  for (const year of [1900, 1904, 1999, 2000, 2001, 2023, 2024, 2099, 2100, 2199])
    for (let month = 0; month <= 13; month++)
      for (let day = 0; day <= 32; day++) {
        const exists = month >= 1 && month <= 12 && existsInCalendar(year, month, day);
        const text = `${year}-${two(month)}-${two(day)}`;
        if (isDay(text) !== exists) wrong.push(text);
      }
  expect(wrong).toEqual([]);
});

it.each([
  '1899-12-31',
  '2200-01-01',
  '2026-3-14',
  '20260314',
  '2026-03-14T00:00',
  ' 2026-03-14',
  '14.03.2026',
  '',
])('the text "%s" is none', (text) => {
  expect(isDay(text)).toBe(false);
});
