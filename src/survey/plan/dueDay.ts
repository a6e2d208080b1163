import { mixedLife } from '../../assess/wear/mixedLife.ts';
import { countedPerDay } from './missingOf.ts';
import type { WearingPart } from './plan.ts';
import type { PlanRow } from './planRow.ts';
import type { StarterWear } from './starterWear.ts';

/**
 * Below this share of worn contacts a reading does not scale the rate of wear: it is twice `READING_ERROR`. Common practice, no
 * source.
 */
export const LEAST_WORN_TO_SCALE = 0.1;

/** What a due day is computed with; each value may be varied by itself. */
export interface DueInputs {
  readonly wear: StarterWear;
  /** Where in its range the life of the contacts is taken. */
  readonly lifeAt: 'low' | 'expected' | 'high';
  readonly pluggingShare: number;
  readonly inchingShare: number;
  readonly operationsPerDay: number;
  /** Added to the share of worn contacts that was read. */
  readonly readingOffset: number;
}

/** When a part of a starter is due. */
export interface DuePart {
  readonly part: WearingPart;
  /** Of contacts and contactor: whose. */
  readonly contactor: 'forward' | 'reverse' | null;
  /** Days since 1970-01-01, with its fraction; infinite: it does not wear. */
  readonly day: number;
  /** Operations of the starter that a new one lasts. */
  readonly life: number;
  /** Share of that life used up on a day. */
  readonly usedOn: (day: number) => number;
  /** The reading replaces the computed wear and scales its rate, or replaces it only; null: no reading. */
  readonly reading: 'scales' | 'replaces' | null;
}

/** Every part of a row's starter whose life is known, contacts first; the same parts whatever the inputs that are varied. */
export function dueParts(row: PlanRow, inputs: DueInputs): readonly [DuePart, ...DuePart[]] {
  return [contactsDue(row, inputs), ...mechanicalParts(row, inputs)];
}

/** Operations since the contacts were changed; null where neither a counter nor the day of the change is stated. */
function operationsOn(row: PlanRow, day: number, operationsPerDay: number): number | null {
  const { counter, counterDay, contactsChanged } = row.duty;
  if (counter !== null && counterDay !== null) {
    const counted = countedPerDay(row.duty);
    // Between the change and the reading the counter tells the rate; after it the stated one holds.
    const rate = day < counterDay && counted !== null ? counted : operationsPerDay;
    return Math.max(0, counter + rate * (day - counterDay));
  }
  return contactsChanged === null ? null : Math.max(0, operationsPerDay * (day - contactsChanged));
}

/** From this day on operations are counted with the rate per day. */
function anchorDay({ duty, inspection }: PlanRow): number {
  if (duty.counter !== null && duty.counterDay !== null) return duty.counterDay;
  return duty.contactsChanged ?? inspection?.day ?? 0;
}

function contactsDue(row: PlanRow, inputs: DueInputs): DuePart {
  const lives = (['forward', 'reverse'] as const).map((contactor) => ({
    contactor,
    life: lifeOfContacts(inputs, contactor),
  }));
  const { contactor, life } = lives.reduce((worse, other) => (other.life < worse.life ? other : worse));
  const { operationsPerDay } = inputs;
  const { inspection } = row;
  const part = { part: 'contacts', contactor } as const;
  if (inspection === null) {
    const from = anchorDay(row);
    const used = (operationsOn(row, from, operationsPerDay) ?? 0) / life;
    return {
      ...part,
      life,
      day: from + ((1 - used) * life) / operationsPerDay,
      usedOn: (day) => used + ((day - from) * operationsPerDay) / life,
      reading: null,
    };
  }
  const worn = Math.max(0, inspection.worn + inputs.readingOffset);
  const computed = (operationsOn(row, inspection.day, operationsPerDay) ?? 0) / life;
  const scales = inspection.worn >= LEAST_WORN_TO_SCALE && computed > 0;
  const corrected = scales ? (life * computed) / worn : life;
  return {
    ...part,
    life: corrected,
    // Worn out is worn out, also where nothing is known to wear.
    day: worn >= 1 ? inspection.day : inspection.day + ((1 - worn) * corrected) / operationsPerDay,
    usedOn: (day) => worn + ((day - inspection.day) * operationsPerDay) / corrected,
    reading: scales ? 'scales' : 'replaces',
  };
}

/** Operations of the duty that one contactor's contacts last; infinite where nothing wears them. */
function lifeOfContacts(inputs: DueInputs, contactor: 'forward' | 'reverse'): number {
  const { normal, plug, inch, lifeFactor } = inputs.wear[contactor];
  const { pluggingShare, inchingShare, lifeAt } = inputs;
  const life = mixedLife(
    [
      { share: Math.max(0, 1 - pluggingShare - inchingShare), wear: normal },
      { share: pluggingShare, wear: plug },
      { share: inchingShare, wear: inch },
    ].map(({ share, wear }) => ({ share, life: 1 / wear })),
  );
  return life === null ? Number.POSITIVE_INFINITY : life * (lifeAt === 'expected' ? 1 : lifeFactor[lifeAt]);
}

/**
 * Mechanical lives count movements: the forward contactor closes once in every operation; the interlock moves with each of the
 * two contactors; the switch picks up in every operation that comes up to speed, which inching does not.
 */
function mechanicalParts(row: PlanRow, inputs: DueInputs): DuePart[] {
  const { contactor, duty } = row;
  const { pluggingShare, inchingShare, operationsPerDay } = inputs;
  const from = anchorDay(row);
  const done = duty.operationsSinceNew ?? operationsOn(row, from, operationsPerDay) ?? 0;
  const rows = [
    { part: 'contactor', life: contactor.mechanicalLife, moves: 1 },
    { part: 'interlock', life: contactor.interlockMechanicalLife, moves: 1 + pluggingShare },
    { part: 'zeroSpeedSwitch', life: contactor.switchMechanicalLife, moves: 1 - inchingShare },
  ] as const;
  return rows.flatMap(({ part, life, moves }) => {
    if (life === null || moves <= 0) return [];
    const operations = life / moves;
    return {
      part,
      contactor: part === 'contactor' ? 'forward' : null,
      life: operations,
      day: from + Math.max(0, operations - done) / operationsPerDay,
      usedOn: (day: number) => (done + (day - from) * operationsPerDay) / operations,
      reading: null,
    };
  });
}
