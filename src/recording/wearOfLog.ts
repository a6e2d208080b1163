import {
  type ContactorWear,
  type ContactWear,
  type CountRange,
  type DateRange,
  WEAR_EVENTS,
  type WearEvent,
} from '../assess/wear/contactWearTypes.ts';
import { dateAfter } from '../assess/wear/replacement.ts';
import { dateOfDay, dayOfDate } from '../numeric/calendarDay.ts';
import type { ContactorName } from '../starter/starter.ts';
import type { LoggedOperation, OperationLog } from './operationLog.ts';
import { SECONDS_PER_DAY } from './readTime.ts';

/** What the operations of a log have used up of one contactor's contacts, and what is left. */
export interface LogWear {
  /** Share of the contacts used up; low and high as the lives have their range; null: not known (`missing`). */
  readonly used: CountRange | null;
  /** What is left, never below 0. */
  readonly left: CountRange | null;
  /** Day on which nothing is left, at the log's own rhythm; null: not known, or never. */
  readonly replacement: DateRange | null;
  /** What is missing for it, in words; and what is left out of it. */
  readonly missing: readonly string[];
}

/** The wear that a log of operations shows. */
export interface WearOfLog {
  /** Operations counted, by kind. */
  readonly counts: Readonly<Record<WearEvent, number>>;
  /** First day counted, YYYY-MM-DD; null: none. */
  readonly first: string | null;
  /** Last day counted, YYYY-MM-DD; null: none. */
  readonly last: string | null;
  readonly contactors: Readonly<Record<ContactorName, LogWear>>;
  /** Words: what was assumed. */
  readonly remarks: readonly string[];
}

/**
 * Adds up the wear of a log of operations, and continues it at its own rhythm: operations of each kind over the time from the
 * first to the last of them (or from the change of contacts).
 *
 * @param contactsChanged YYYY-MM-DD; operations before that day do not count; null: the log begins with new contacts
 */
export function wearOfLog(log: OperationLog, wear: ContactWear, contactsChanged: string | null): WearOfLog {
  const changed = contactsChanged === null ? null : dayOfDate(contactsChanged);
  const from = changed === null ? Number.NEGATIVE_INFINITY : changed * SECONDS_PER_DAY;
  const counted = log.operations.filter(({ time }) => time.seconds >= from);
  const counts = Object.fromEntries(
    WEAR_EVENTS.map((event) => [event, counted.filter((operation) => operation.event === event).length]),
  ) as Record<WearEvent, number>;
  const first = counted[0];
  const last = counted.at(-1);
  const days =
    first === undefined
      ? 0
      : (last!.time.seconds - (changed === null ? first.time.seconds : from)) / SECONDS_PER_DAY;
  const left = log.operations.length - counted.length;
  return {
    counts,
    first: dayOf(first),
    last: dayOf(last),
    contactors: {
      forward: logWear(wear.forward, counts, days, dayOf(last)),
      reverse: logWear(wear.reverse, counts, days, dayOf(last)),
    },
    remarks: [
      ...log.remarks,
      changed === null
        ? 'the contacts are taken as new at the first line of the log'
        : `operations since ${contactsChanged} count${left > 0 ? `; ${left} before that day are left out` : ''}`,
    ],
  };
}

function dayOf(operation: LoggedOperation | undefined): string | null {
  return operation === undefined ? null : dateOfDay(Math.floor(operation.time.seconds / SECONDS_PER_DAY));
}

function logWear(
  contactor: ContactorWear,
  counts: Readonly<Record<WearEvent, number>>,
  days: number,
  last: string | null,
): LogWear {
  const occurring = WEAR_EVENTS.filter((event) => counts[event] > 0);
  const unknown = occurring.filter((event) => contactor.perEvent[event] === null && event !== 'start');
  const missing = contactor.missing.filter((text) => text.startsWith('make erosion'));
  if (unknown.length > 0 || last === null) {
    const what =
      last === null
        ? 'an operation'
        : `the wear of ${unknown.map((event) => EVENT_WORDS[event]).join(' and ')}`;
    return {
      used: null,
      left: null,
      replacement: null,
      missing: [`wear is not known because ${what} is missing`, ...missing],
    };
  }
  const { lowFactor, highFactor } = contactor.basis;
  const worst = contactor.worstPole?.factor ?? 1;
  const value = occurring.reduce((sum, event) => sum + counts[event] * (contactor.perEvent[event] ?? 0), 0);
  // A long life is little wear.
  const used: CountRange = { value, low: value / highFactor, high: (value * worst) / lowFactor };
  const left: CountRange = {
    value: Math.max(0, 1 - used.value),
    low: Math.max(0, 1 - used.high),
    high: Math.max(0, 1 - used.low),
  };
  if (days <= 0)
    return {
      used,
      left,
      replacement: null,
      missing: [...missing, 'the date is not known because the log covers no time'],
    };
  const after = (share: number, of: number) => (of === 0 ? null : dateAfter(last, share / (of / days)));
  const replacement =
    value === 0
      ? null
      : {
          value: after(left.value, used.value),
          low: after(left.low, used.high),
          high: after(left.high, used.low),
        };
  return { used, left, replacement, missing };
}

const EVENT_WORDS: Readonly<Record<WearEvent, string>> = {
  start: 'starts',
  stop: 'stops',
  plugStop: 'plug stops',
  reversal: 'reversals',
  inch: 'inching',
};
