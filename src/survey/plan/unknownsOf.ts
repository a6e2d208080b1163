import type { DueInputs } from './dueDay.ts';
import { percentText } from './percentText.ts';
import type { AssumptionKey } from './plan.ts';
import type { PlanRow } from './planRow.ts';
import { isWear, type WearOfStarter } from './starterWear.ts';
import {
  ASSUMED_INERTIA,
  COUNTED_RATE,
  type FactorRange,
  PLUG_EVERY_STOP,
  READING_ERROR,
  STATED_INERTIA,
  STATED_RATE,
  STATED_SHARE,
} from './uncertainty.ts';

/** One thing that is not known well: its inputs at both ends, and its name. */
export interface Unknown {
  readonly key: AssumptionKey;
  readonly words: string;
  readonly ends: readonly [Partial<DueInputs>, Partial<DueInputs>];
}

/**
 * What is not known well of a row's starter.
 *
 * @param governing contactor whose contacts are worn out first
 * @param remarks gets a sentence for what cannot be varied
 */
export function unknownsOf(
  row: PlanRow,
  inputs: DueInputs,
  governing: 'forward' | 'reverse',
  wearOf: WearOfStarter,
  remarks: string[],
): Unknown[] {
  const { duty, load, inspection } = row;
  const { pluggingShare, inchingShare, operationsPerDay, wear } = inputs;
  const found: Unknown[] = [
    {
      key: 'life',
      words: `life of the contacts (${wear.origin}), ${times(wear[governing].lifeFactor)}`,
      ends: [{ lifeAt: 'low' }, { lifeAt: 'high' }],
    },
  ];
  const rate = duty.operationsPerDay === null ? COUNTED_RATE : STATED_RATE;
  const rateFrom = duty.operationsPerDay === null ? 'from the counter' : 'stated';
  found.push({
    key: 'operationsPerDay',
    words: `operations per day (${rateFrom}), ${times(rate)}`,
    ends: [
      { operationsPerDay: operationsPerDay * rate.low },
      { operationsPerDay: operationsPerDay * rate.high },
    ],
  });
  if (pluggingShare > 0) {
    const range = duty.pluggingShare === null ? PLUG_EVERY_STOP : STATED_SHARE;
    const at = (factor: number) => Math.min(1 - inchingShare, pluggingShare * factor);
    const from = duty.pluggingShare === null ? 'every normal stop, by "stop by"' : 'stated';
    found.push({
      key: 'pluggingShare',
      words: `share of plugging (${from}), ${percentText(at(range.low))} to ${percentText(at(range.high))}`,
      ends: [{ pluggingShare: at(range.low) }, { pluggingShare: at(range.high) }],
    });
    const inertia = load.inertia === null ? ASSUMED_INERTIA : STATED_INERTIA;
    const ends = [wearOf(row, inertia.low), wearOf(row, inertia.high)];
    const [low, high] = ends;
    if (low !== undefined && high !== undefined && isWear(low) && isWear(high))
      found.push({
        key: 'loadInertia',
        words: `load inertia (${load.inertia === null ? 'assumed' : 'stated'}), ${times(inertia)}`,
        ends: [{ wear: low }, { wear: high }],
      });
    else remarks.push('The load inertia is not varied: a run with another one does not end well.');
  }
  if (inspection !== null)
    found.push({
      key: 'reading',
      words: `reading of the inspection, ± ${percentText(READING_ERROR)} of the wear allowance`,
      ends: [{ readingOffset: READING_ERROR }, { readingOffset: -READING_ERROR }],
    });
  return found;
}

function times({ low, high }: FactorRange): string {
  return `× ${Number(low.toPrecision(2))} to × ${Number(high.toPrecision(3))}`;
}
