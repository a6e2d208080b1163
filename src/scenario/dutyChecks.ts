import { withUnit } from './field.ts';
import type { DutyData } from './judgementData.ts';
import type { Impossibility } from './starterView.ts';

/** A duty as far as its parts depend on each other; null: not stated, undefined: not known, as it was refused. */
export type DutyView = {
  readonly [K in
    | 'operationsPerHour'
    | 'operationsPerDay'
    | 'runningTime'
    | 'cyclicDurationFactor'
    | 'pluggingShare'
    | 'inchingShare']: DutyData[K] | null | undefined;
};

/** s */
const HOUR = 3600;
const HOURS_OF_DAY = 24;

/** Rounding of shares written in percent, absolute. */
const ROUNDING = 1e-9;

/**
 * What parts of a duty cannot be beside each other.
 *
 * @param view shares 0 … 1, times in s
 */
export function dutyImpossibilities(view: DutyView): readonly Impossibility[] {
  const found: Impossibility[] = [];
  const report = (key: string, message: string, expected: string) =>
    found.push({ path: ['duty', key], message, expected });
  const { operationsPerHour: perHour, operationsPerDay: perDay, runningTime, cyclicDurationFactor } = view;
  const sum = (view.pluggingShare ?? 0) + (view.inchingShare ?? 0);

  if (runningTime !== null && cyclicDurationFactor !== null)
    report('cyclicDurationFactor', 'stands beside runningTime; each fixes the other', 'one of the two');
  if (sum > 1 + ROUNDING) {
    const message = `and pluggingShare come to ${Number((100 * sum).toPrecision(6))} % of all operations`;
    report('inchingShare', message, 'at most 100 % together');
  }
  if (isNumber(perHour) && isNumber(perDay) && perDay > HOURS_OF_DAY * perHour * (1 + ROUNDING)) {
    const message = `is more than ${HOURS_OF_DAY} hours of ${perHour} operations come to`;
    report('operationsPerDay', message, `at most ${HOURS_OF_DAY * perHour}, or more operationsPerHour`);
  }
  if (isNumber(perHour) && isNumber(runningTime) && runningTime * perHour > HOUR * (1 + ROUNDING)) {
    const cycle = withUnit(HOUR / perHour, 's');
    const message = `is longer than the ${cycle} from one operation to the next`;
    report('runningTime', message, `less than ${cycle}, or fewer operationsPerHour`);
  }
  return found;
}

function isNumber(value: number | null | undefined): value is number {
  return typeof value === 'number';
}
