import { stated } from '../../scenario/stated.ts';
import { type DueInputs, type DuePart, dueParts, firstDue, LEAST_WORN_TO_SCALE } from './dueDay.ts';
import { countedPerDay } from './missingOf.ts';
import type { AssumptionEffect, AssumptionKey, PlannedStarter, WearingPart } from './plan.ts';
import type { PlanRow } from './planRow.ts';
import type { WearNotFound, WearOfStarter } from './starterWear.ts';
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
interface Unknown {
  readonly key: AssumptionKey;
  readonly words: string;
  readonly ends: readonly [Partial<DueInputs>, Partial<DueInputs>];
}

/**
 * Plans one starter.
 *
 * @param row that lacks nothing
 * @param asOf days since 1970-01-01
 */
export function planStarter(
  row: PlanRow,
  asOf: number,
  wearOf: WearOfStarter,
): PlannedStarter | WearNotFound {
  const wear = wearOf(row, 1);
  if ('missing' in wear) return wear;
  const counted = countedPerDay(row.duty);
  const inchingShare = row.duty.inchingShare ?? 0;
  const inputs: DueInputs = {
    wear,
    lifeAt: 'expected',
    pluggingShare: row.duty.pluggingShare ?? (row.duty.stopBy === 'plug' ? 1 - inchingShare : 0),
    inchingShare,
    operationsPerDay: stated(row.duty.operationsPerDay ?? counted ?? undefined, 'operations per day'),
    readingOffset: 0,
  };
  const parts = dueParts(row, inputs);
  const due = firstDue(parts);
  const dayWith = (changed: Partial<DueInputs>) => firstDue(dueParts(row, { ...inputs, ...changed })).day;
  const remarks = [...wear.remarks, ...notCounted(row, inputs)];
  const effects: AssumptionEffect[] = [];
  let bad: Partial<DueInputs> = {};
  let good: Partial<DueInputs> = {};
  for (const { key, words, ends } of unknowns(
    row,
    inputs,
    parts[0]!.contactor ?? 'forward',
    wearOf,
    remarks,
  )) {
    const days = ends.map(dayWith) as [number, number];
    const badFirst = days[0] <= days[1];
    bad = { ...bad, ...ends[badFirst ? 0 : 1] };
    good = { ...good, ...ends[badFirst ? 1 : 0] };
    effects.push({ key, words, earliest: Math.min(due.day, ...days), latest: Math.max(due.day, ...days) });
  }
  return {
    tag: row.tag,
    description: row.description,
    spareKit: row.spareKit,
    motorPower: row.motor.power,
    expected: due.day,
    earliest: Math.min(due.day, dayWith(bad)),
    latest: Math.max(due.day, dayWith(good)),
    part: due.part,
    partWords: wordsOf(due),
    operationsPerDay: inputs.operationsPerDay,
    pluggingShare: inputs.pluggingShare,
    life: due.life,
    used: due.usedOn(asOf),
    lifeOrigin: due.part === 'contacts' ? wear.origin : 'mechanical life as stated',
    effects: effects.filter(({ earliest, latest }) => latest > earliest).sort(wider),
    inspection: inspectionWords(row, parts[0]!),
    remarks,
  };
}

function unknowns(
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
      words: `share of plugging (${from}), ${percent(at(range.low))} to ${percent(at(range.high))}`,
      ends: [{ pluggingShare: at(range.low) }, { pluggingShare: at(range.high) }],
    });
    const inertia = load.inertia === null ? ASSUMED_INERTIA : STATED_INERTIA;
    const ends = [wearOf(row, inertia.low), wearOf(row, inertia.high)];
    const [low, high] = ends;
    if (low !== undefined && high !== undefined && !('missing' in low) && !('missing' in high))
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
      words: `reading of the inspection, ± ${percent(READING_ERROR)} of the wear allowance`,
      ends: [{ readingOffset: READING_ERROR }, { readingOffset: -READING_ERROR }],
    });
  return found;
}

/** Wider ranges first; an infinite one is the widest. */
function wider(a: AssumptionEffect, b: AssumptionEffect): number {
  const [widthA, widthB] = [a.latest - a.earliest, b.latest - b.earliest];
  return widthA === widthB ? 0 : widthA > widthB ? -1 : 1;
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

/** What the due day leaves out, or takes for something that nobody stated. */
function notCounted({ contactor, duty }: PlanRow, { pluggingShare }: DueInputs): string[] {
  const lives = [
    ['contactor', contactor.mechanicalLife, true],
    ['interlock', contactor.interlockMechanicalLife, pluggingShare > 0],
    ['zero-speed switch', contactor.switchMechanicalLife, pluggingShare > 0],
  ] as const;
  const unknown = lives.filter(([, life, matters]) => life === null && matters).map(([name]) => name);
  const known = lives.some(([, life]) => life !== null);
  return [
    ...(unknown.length > 0
      ? [`Not counted, because not stated: mechanical life of ${unknown.join(', ')}.`]
      : []),
    ...(known && duty.operationsSinceNew === null
      ? [
          'Mechanical life is counted from the last change of contacts: the operations since new are not stated.',
        ]
      : []),
  ];
}

function inspectionWords({ inspection }: PlanRow, { reading }: DuePart): string | null {
  if (inspection === null) return null;
  const read = `${inspection.reading}: ${percent(inspection.worn)} worn`;
  if (reading === 'scales')
    return `${read}; it takes the place of the computed wear and scales its rate by measured over computed`;
  const why =
    inspection.worn < LEAST_WORN_TO_SCALE
      ? `below ${percent(LEAST_WORN_TO_SCALE)} it does not scale the rate`
      : 'no count of operations before it is known that could scale the rate';
  return `${read}; it takes the place of the computed wear; ${why}`;
}

function times({ low, high }: FactorRange): string {
  return `× ${Number(low.toPrecision(2))} to × ${Number(high.toPrecision(3))}`;
}

function percent(share: number): string {
  return `${Number((100 * share).toPrecision(3))} %`;
}
