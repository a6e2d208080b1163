import type { PlanRow } from './planRow.ts';
import { COUNTER_DISAGREES } from './uncertainty.ts';

/**
 * What a row states twice and differently, as sentences: operations per day by its counter, and as stated.
 *
 * @returns empty where nothing disagrees
 */
export function doubtsOf({
  counter,
  counterDay,
  contactsChanged,
  operationsPerDay,
}: PlanRow['duty']): string[] {
  if (counter === null || counterDay === null || contactsChanged === null || operationsPerDay === null)
    return [];
  const days = counterDay - contactsChanged;
  if (days <= 0) return [];
  const ratio = counter / days / operationsPerDay;
  const isMore = ratio > COUNTER_DISAGREES;
  if (!isMore && ratio >= 1 / COUNTER_DISAGREES) return [];
  const advice = isMore
    ? 'counter is the number since that change; the number since new belongs under operations since new'
    : 'one of them needs checking';
  return [
    `The counter gives ${digits(counter / days)} operations a day since the contacts were changed, stated are ${digits(operationsPerDay)}: ${advice}.`,
  ];
}

function digits(value: number): string {
  return String(Number(value.toPrecision(3)));
}
