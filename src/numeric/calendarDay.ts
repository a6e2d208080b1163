/** Days of the proleptic Gregorian calendar as whole numbers, 0 being 1970-01-01: differences are days. */

/** Days of 400 years, after which the calendar repeats. */
const DAYS_OF_ERA = 146_097;
/** Days of 0000-03-01 before 1970-01-01. */
const EPOCH_SHIFT = 719_468;

const DATE = /^(\d{4})-(\d{2})-(\d{2})$/;

/**
 * Number of a day.
 *
 * @param date YYYY-MM-DD
 * @returns days since 1970-01-01; null where the text is no date of the calendar
 */
export function dayOfDate(date: string): number | null {
  const found = DATE.exec(date);
  if (found === null) return null;
  const [year, month, day] = found.slice(1).map(Number) as [number, number, number];
  if (month < 1 || month > 12 || day < 1) return null;
  const number = dayOf(year, month, day);
  // The 30th of February would be a day of March.
  return dateOfDay(number) === date ? number : null;
}

/** Date of a day, YYYY-MM-DD; `day` days since 1970-01-01, whole, in the years 0 to 9999. */
export function dateOfDay(day: number): string {
  const { year, month, dayOfMonth } = civil(day);
  return `${String(year).padStart(4, '0')}-${two(month)}-${two(dayOfMonth)}`;
}

/** A quarter of a year. */
export interface Quarter {
  readonly year: number;
  /** 1 … 4 */
  readonly quarter: number;
}

/** Quarter of the calendar year that a day falls into. */
export function quarterOfDay(day: number): Quarter {
  const { year, month } = civil(day);
  return { year, quarter: Math.ceil(month / 3) };
}

/** Year of a day. */
export function yearOfDay(day: number): number {
  return civil(day).year;
}

/**
 * Years begin with March here, so that the leap day is the last of its year.
 *
 * @remarks The method of counting eras of 400 years is common knowledge of calendar arithmetic.
 */
function dayOf(year: number, month: number, day: number): number {
  const marchYear = month <= 2 ? year - 1 : year;
  const era = Math.floor(marchYear / 400);
  const yearOfEra = marchYear - 400 * era;
  const dayOfYear = Math.floor((153 * ((month + 9) % 12) + 2) / 5) + day - 1;
  const dayOfEra = 365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return DAYS_OF_ERA * era + dayOfEra - EPOCH_SHIFT;
}

function civil(day: number): { readonly year: number; readonly month: number; readonly dayOfMonth: number } {
  const shifted = day + EPOCH_SHIFT;
  const era = Math.floor(shifted / DAYS_OF_ERA);
  const dayOfEra = shifted - DAYS_OF_ERA * era;
  const yearOfEra = Math.floor(
    (dayOfEra -
      Math.floor(dayOfEra / 1460) +
      Math.floor(dayOfEra / 36_524) -
      Math.floor(dayOfEra / 146_096)) /
      365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const marchMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const month = ((marchMonth + 2) % 12) + 1;
  return {
    year: yearOfEra + 400 * era + (month <= 2 ? 1 : 0),
    month,
    dayOfMonth: dayOfYear - Math.floor((153 * marchMonth + 2) / 5) + 1,
  };
}

function two(value: number): string {
  return String(value).padStart(2, '0');
}
