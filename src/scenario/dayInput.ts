import { z } from 'zod';
import { packFault, packTypeFault } from './fault.ts';
import { quoted } from './parseQuantity.ts';

const dayPattern = '^(\\d{4})-(\\d{2})-(\\d{2})$';

/** Years; a day outside is a slip of the pen. */
const firstYear = 1900;
const lastYear = 2199;

/** Days of the months of a year that is no leap year. */
const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/**
 * True for a day of the Gregorian calendar written as YYYY-MM-DD, within the years of motors.
 *
 * @param text such as `2026-03-14`
 */
export function isDay(text: string): boolean {
  const found = new RegExp(dayPattern).exec(text);
  if (found === null) return false;
  const [year, month, day] = found.slice(1).map(Number) as [number, number, number];
  if (year < firstYear || year > lastYear || day < 1) return false;
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  const days = DAYS[month - 1] ?? 0;
  return day <= days + (leap && month === 2 ? 1 : 0);
}

/**
 * A day, in quotes or not.
 *
 * @param about for the editor
 */
export function day(about: string) {
  const expected = 'a day as YYYY-MM-DD, such as `2026-03-14`';
  return z
    .string({ error: ({ input }) => packTypeFault(input, expected) })
    .refine(isDay, {
      error: ({ input }) => {
        const written = String(input);
        const year = Number(new RegExp(dayPattern).exec(written)?.[1] ?? Number.NaN);
        const why = Number.isNaN(year)
          ? 'is not a day written as YYYY-MM-DD'
          : year < firstYear || year > lastYear
            ? `is not in the years ${firstYear} to ${lastYear}`
            : 'is no day of the calendar';
        return packFault('outOfRange', `${quoted(written)} ${why}`, expected);
      },
    })
    .meta({
      description: `${about}. A day as YYYY-MM-DD.`,
      examples: ['2026-03-14'],
      pattern: dayPattern,
    });
}
