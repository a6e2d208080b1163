import { describe, expect, it } from 'vitest';
import { dayOfDate } from '../../../src/numeric/calendarDay.ts';
import { logUntil } from '../../../src/recording/logUntil.ts';
import { parseOperationLog } from '../../../src/recording/operationLog.ts';

const LOG = parseOperationLog(
  'time,operation\n2026-03-01T23:59:59,start\n2026-03-02T00:00:00,inch\n2026-03-05,coast\n',
  'log.csv',
);
const until = (date: string) => logUntil(LOG, dayOfDate(date) ?? Number.NaN);

describe('a log up to the end of a day', () => {
  it('keeps the last second of the day and leaves out the first of the next', () => {
    const { operations, remarks } = until('2026-03-01');
    expect(operations.map(({ event }) => event)).toEqual(['start']);
    expect(remarks).toEqual(['2 operations after that day left out']);
  });

  it('says that it ends before the day', () => {
    const { operations, remarks } = until('2026-03-08');
    expect(operations).toEqual(LOG.operations);
    expect(remarks).toEqual(['the log ends 3 days before that day: what was done since is not in it']);
  });

  it('is unchanged by its own last day, and empty before its first', () => {
    expect(until('2026-03-05')).toEqual(LOG);
    expect(until('2026-02-28')).toEqual({
      operations: [],
      remarks: ['3 operations after that day left out'],
    });
  });
});
