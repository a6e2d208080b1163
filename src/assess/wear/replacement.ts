import { dateOfDay, dayOfDate } from '../../numeric/calendarDay.ts';
import type { DutyData } from '../../scenario/scenario.ts';
import type { CountRange, DateRange } from './contactWearTypes.ts';

/** The last day that is written with four digits of the year. */
const LAST_DAY = dayOfDate('9999-12-31')!;

/** Days: a count that rounding leaves just short of a whole day is that day. */
const ROUNDING = 1e-6;

/** Day a number of days after a date, YYYY-MM-DD, the begun day not counted; null beyond the year 9999, or where the date is none. */
export function dateAfter(date: string, days: number): string | null {
  const first = dayOfDate(date);
  if (first === null) return null;
  const day = first + Math.floor(days + ROUNDING);
  return day <= LAST_DAY ? dateOfDay(day) : null;
}

/** Days after which a count of operations is reached, for value and ends of its range. */
export function datesAfter(date: string, operations: CountRange, perDay: number): DateRange {
  const on = (count: number) => dateAfter(date, count / perDay);
  return { value: on(operations.value), low: on(operations.low), high: on(operations.high) };
}

/** When contacts that last so many operations of the duty are to be replaced, at its own rhythm since they were changed. */
export function replacement(operations: CountRange | null, duty: DutyData | null): DateRange | null {
  if (operations === null || duty === null) return null;
  const { contactsChanged, operationsPerDay } = duty;
  if (contactsChanged === null || operationsPerDay === null || operationsPerDay <= 0) return null;
  return datesAfter(contactsChanged, operations, operationsPerDay);
}

/** What is left of a count after operations that are done; never below 0. */
export function leftOf(operations: CountRange | null, done: number | null): CountRange | null {
  if (operations === null || done === null) return null;
  const left = (count: number) => Math.max(0, count - done);
  return { value: left(operations.value), low: left(operations.low), high: left(operations.high) };
}
