import { type DueInputs, type DuePart, dueParts } from './dueDay.ts';
import type { AssumptionEffect, PlannedPart, WearingPart } from './plan.ts';
import type { PlanRow } from './planRow.ts';
import type { Unknown } from './unknownsOf.ts';

/**
 * Every part of a starter with its own dates: what is bad for one part may be good for another, so that each has its earliest and
 * latest day over all combinations of the ends of what is not known.
 *
 * @param asOf days since 1970-01-01
 * @returns by expected day; of equals in the order of `dueParts`
 */
export function plannedParts(
  row: PlanRow,
  inputs: DueInputs,
  unknowns: readonly Unknown[],
  asOf: number,
): readonly [PlannedPart, ...PlannedPart[]] {
  const corners = cornersOf(unknowns).map((corner) => dueParts(row, { ...inputs, ...corner }));
  const alone = unknowns.map(({ key, words, ends }) => ({
    key,
    words,
    ends: ends.map((end) => dueParts(row, { ...inputs, ...end })),
  }));
  const planned = dueParts(row, inputs).map((due, k): PlannedPart => {
    const dayOf = (parts: readonly DuePart[]) => parts[k]!.day;
    const effects = alone.map(({ key, words, ends }) => ({ key, words, ...range(due.day, ends.map(dayOf)) }));
    return {
      part: due.part,
      words: wordsOf(due),
      expected: due.day,
      ...range(due.day, corners.map(dayOf)),
      life: due.life,
      lifeOrigin: due.part === 'contacts' ? inputs.wear.origin : 'mechanical life as stated',
      used: due.usedOn(asOf),
      effects: effects.filter(({ earliest, latest }) => latest > earliest).sort(wider),
    };
  });
  const [first, ...others] = planned.sort((a, b) => ascending(a.expected, b.expected));
  return [first!, ...others];
}

/** All combinations of the ends: at most two to the power of five. */
function cornersOf(unknowns: readonly Unknown[]): Partial<DueInputs>[] {
  let corners: Partial<DueInputs>[] = [{}];
  for (const { ends } of unknowns)
    corners = corners.flatMap((corner) => ends.map((end) => ({ ...corner, ...end })));
  return corners;
}

function range(day: number, days: readonly number[]): { earliest: number; latest: number } {
  return { earliest: Math.min(day, ...days), latest: Math.max(day, ...days) };
}

/** Wider ranges first; an infinite one is the widest. */
function wider(a: AssumptionEffect, b: AssumptionEffect): number {
  return ascending(b.latest - b.earliest, a.latest - a.earliest);
}

/** Two infinite days are alike: their difference is not a number. */
export function ascending(a: number, b: number): number {
  return a === b ? 0 : a < b ? -1 : 1;
}

const PART_WORDS: Readonly<Record<WearingPart, string>> = {
  contacts: 'contacts',
  contactor: 'contactor (mechanical life)',
  interlock: 'mechanical interlock (mechanical life)',
  zeroSpeedSwitch: 'zero-speed switch (mechanical life)',
};

function wordsOf({ part, contactor }: DuePart): string {
  if (part !== 'contacts') return PART_WORDS[part];
  return `contacts of the ${contactor === 'forward' ? 'forward' : 'reversing'} contactor`;
}
