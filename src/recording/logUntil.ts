import type { OperationLog } from './operationLog.ts';
import { SECONDS_PER_DAY } from './readTime.ts';

/**
 * A log up to the end of a day: operations after it are left out, and a remark says how many; where the log ends before the
 * day, a remark says so.
 *
 * @param day days since 1970-01-01
 */
export function logUntil(log: OperationLog, day: number): OperationLog {
  const end = (day + 1) * SECONDS_PER_DAY;
  const operations = log.operations.filter(({ time }) => time.seconds < end);
  const later = log.operations.length - operations.length;
  const last = operations.at(-1);
  const silent = last === undefined ? 0 : day - Math.floor(last.time.seconds / SECONDS_PER_DAY);
  return {
    operations,
    remarks: [
      ...log.remarks,
      ...(later === 0
        ? []
        : [`${later} ${later === 1 ? 'operation' : 'operations'} after that day left out`]),
      ...(silent === 0
        ? []
        : [
            `the log ends ${silent} ${silent === 1 ? 'day' : 'days'} before that day: what was done since is not in it`,
          ]),
    ],
  };
}
