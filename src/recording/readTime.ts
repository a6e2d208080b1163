import { dayOfDate } from '../numeric/calendarDay.ts';

/** A point in time as a log writes it. */
export interface LogTime {
  /** In seconds since 1970-01-01T00:00, of universal time where an offset is stated, else of the log's own clock. */
  readonly seconds: number;
  /** A day alone: what happened at which time of it is not known. */
  readonly dayOnly: boolean;
  readonly hasOffset: boolean;
}

/** s */
export const SECONDS_PER_DAY = 86_400;
const SECONDS_PER_HOUR = 3600;
const SECONDS_PER_MINUTE = 60;

const PATTERN =
  /^(\d{4}-\d{2}-\d{2})(?:[T ](\d{2}):(\d{2})(?::(\d{2})(?:[.,](\d{1,9}))?)?(?:(Z)|([+-])(\d{2}):?(\d{2}))?)?$/i;

/**
 * Reads a date or a date with a time of day as ISO 8601 writes them (extended form; a blank may stand for the T).
 *
 * @returns null where the text is neither, or no day of the calendar
 */
export function readTime(text: string): LogTime | null {
  const found = PATTERN.exec(text);
  if (found === null) return null;
  const [
    ,
    date,
    hour,
    minute,
    second = '0',
    fraction = '0',
    zulu,
    sign,
    offsetHour = '0',
    offsetMinute = '0',
  ] = found;
  const day = dayOfDate(date!);
  if (day === null) return null;
  const start = day * SECONDS_PER_DAY;
  if (hour === undefined) return { seconds: start, dayOnly: true, hasOffset: false };
  // 24:00 is the end of a day, 60 a leap second.
  const inDay = clock(hour, minute!) + Number(`${second}.${fraction}`);
  const valid =
    Number(minute) < 60 && Number(second) <= 60 && (Number(hour) < 24 || inDay === SECONDS_PER_DAY);
  const offset = clock(offsetHour, offsetMinute);
  if (!valid || Number(offsetMinute) >= 60 || offset >= SECONDS_PER_DAY) return null;
  return {
    seconds: start + inDay - (sign === '-' ? -offset : offset),
    dayOnly: false,
    hasOffset: zulu !== undefined || sign !== undefined,
  };
}

function clock(hours: string, minutes: string): number {
  return Number(hours) * SECONDS_PER_HOUR + Number(minutes) * SECONDS_PER_MINUTE;
}
