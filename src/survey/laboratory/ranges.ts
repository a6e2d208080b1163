import { squared } from '../../numeric/raised.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { OPENING_INSTANTS } from '../openingInstants.ts';
import type { Bench } from './bench.ts';
import type { RangePart } from './laboratory.ts';
import { shaftTorques } from './limits.ts';
import { movingQuantities, type RunAngles, type RunFigures, runFigures } from './movingQuantities.ts';
import { QUANTITIES, QUANTITY_KEYS, type Quantities, type QuantityKey } from './quantities.ts';
import { steadyQuantities, storedEnergy } from './steadyQuantities.ts';
import { offBy, TOLERANCES, type Tolerance } from './tolerances.ts';

/** What a quantity may come out as. SI. */
export interface Range {
  readonly predicted: number;
  readonly low: number;
  readonly high: number;
  readonly scatter: { readonly low: number; readonly high: number };
  readonly parts: readonly RangePart[];
  /** Tolerances within which the quantity does not occur in some run. */
  readonly openBy: readonly string[];
}

/** Only every sixth closing instant is reversed at as well: its time and heat hardly know the closing instant. */
const REVERSAL_EVERY = 6;
/**
 * A changed dead time is tried at every third closing instant: at the instant of a crest alone it would only move the crest along its
 * curve over the instants.
 */
const DEAD_TIME_EVERY = 3;
/** Turned while a set coasts to rest: with the square of the speed it begins at. */
const ADDS_IN_ROOTS: readonly QuantityKey[] = ['creepAngle'];
/** A set that its load drives gives power back; nothing else has a sign. */
const SIGNED: readonly QuantityKey[] = ['noLoadPower'];
/** Parts below this share of a range are not named. */
const SMALLEST_PART = 0.005;

/**
 * Ranges of everything that a set shows. The runs are repeated over thirteen closing instants of half a period, after which every current
 * comes again with the other sign. The crest of a start, and which pole clears first, come again three times within it: thirteen angles
 * spread over that too, while twelve would be four of them three times over.
 * Each tolerance is then taken to both its ends by itself, at the closing instants of the lowest and the highest crest, and what it adds
 * below the lowest and above the highest is added to the scatter and to the accuracy of the instrument. They are added, not joined as
 * root of the sum of squares: they are limits and not standard deviations, and a reading outside shall mean that something is not as
 * stated, not that several limits were nearly reached at once.
 */
export function rangesOf(bench: Bench): ReadonlyMap<QuantityKey, Range> {
  const { scenario } = bench;
  const angles = Array.from(
    { length: OPENING_INSTANTS },
    (_, k) => scenario.supply.angle + (k * Math.PI) / OPENING_INSTANTS,
  );
  const asStated = angles.map((angle, k) =>
    runFigures(scenario, bench, {
      start: angle,
      plug: angle,
      reversal: k % REVERSAL_EVERY === 0 ? angle : null,
    }),
  );
  const all = asStated.map((runs) => quantitiesOf(scenario, bench, runs));
  const trial = (of: { start: number; plug: number }, reversal: number | null): Trial => ({
    angles: {
      start: angles[of.start]!,
      plug: angles[of.plug]!,
      reversal: reversal === null ? null : angles[reversal]!,
    },
    runs: {
      start: asStated[of.start]!.start,
      plug: asStated[of.plug]!.plug,
      reversal: reversal === null ? null : asStated[reversal]!.reversal,
    },
  });
  const extreme = extremes(asStated).map((of, k) => trial(of, k === 0 ? 0 : null));
  const spread = angles
    .map((_, k) => onlyPlug(trial({ start: k, plug: k }, null)))
    .filter((_, k) => k % DEAD_TIME_EVERY === 0 && k < angles.length - 1);
  const trials: Readonly<Record<Tolerance['moves'], readonly Trial[]>> = {
    everything: extreme,
    motion: extreme.slice(0, 1),
    changeOver: spread,
    steady: [NO_RUN],
  };
  const shifts = TOLERANCES.map((tolerance): Shift => {
    const own = trials[tolerance.moves];
    return {
      tolerance,
      base: own.map(({ runs }) => quantitiesOf(scenario, bench, runs)),
      ends: [-1, 1].map((part) => {
        const changed = offBy(scenario, tolerance, part);
        return own.map((one) => quantitiesOf(changed, bench, runFigures(changed, bench, one.angles)));
      }),
    };
  });
  const ranges = new Map<QuantityKey, Range>();
  for (const key of QUANTITY_KEYS) {
    const range = rangeOf(key, all, shifts);
    if (range !== null) ranges.set(key, range);
  }
  return ranges;
}

/** Everything that a set shows in its runs. */
export function quantitiesOf(
  scenario: Scenario,
  { direction }: Pick<Bench, 'direction'>,
  runs: RunFigures,
): Quantities {
  return {
    ...steadyQuantities(scenario, direction),
    ...movingQuantities(runs, storedEnergy(scenario, direction)),
    ...shaftTorques(scenario, runs),
  };
}

/** A tolerance at both its ends, beside the same runs as stated. */
interface Shift {
  readonly tolerance: Tolerance;
  readonly base: readonly Quantities[];
  readonly ends: readonly (readonly Quantities[])[];
}

/** Closing instants at which runs are repeated with changed data, and their figures as stated. */
interface Trial {
  readonly angles: RunAngles;
  readonly runs: RunFigures;
}

const NO_RUN: Trial = {
  angles: { start: null, plug: null, reversal: null },
  runs: { start: null, plug: null, reversal: null },
};

function onlyPlug({ angles, runs }: Trial): Trial {
  return { angles: { ...NO_RUN.angles, plug: angles.plug }, runs: { ...NO_RUN.runs, plug: runs.plug } };
}

function rangeOf(key: QuantityKey, all: readonly Quantities[], shifts: readonly Shift[]): Range | null {
  const valuesIn = (list: readonly Quantities[]) => list.flatMap((quantities) => quantities[key] ?? []);
  const values = valuesIn(all);
  if (values.length === 0) return null;
  const predicted = values.reduce((sum, value) => sum + value, 0) / values.length;
  const scatter = { low: Math.min(...values), high: Math.max(...values) };
  const { share, absolute, instrument } = QUANTITIES[key];
  const moves = shifts.map(({ tolerance, base, ends }) => {
    const stated = valuesIn(base);
    return {
      words: tolerance.words,
      stated: endsOf(stated, scatter),
      changed: ends.map(valuesIn).map((end) => endsOf(end, endsOf(stated, scatter))),
      lost: ends.some((end) => valuesIn(end).length < stated.length),
    };
  });
  // What goes with the square of a speed adds up in that speed.
  const root = ADDS_IN_ROOTS.includes(key) ? Math.sqrt : (value: number) => value;
  const sum = (by: (value: number) => number, side: 'low' | 'high') =>
    moves.reduce(
      (total, { stated, changed }) => total + beyond(stated, changed, by, side),
      Math.abs(by(predicted) - by(scatter[side])),
    );
  const least = SIGNED.includes(key) ? Number.NEGATIVE_INFINITY : 0;
  const below = Math.max(least, root(predicted) - sum(root, 'low'));
  const above = root(predicted) + sum(root, 'high');
  const bottom = ADDS_IN_ROOTS.includes(key) ? squared(below) : below;
  const top = ADDS_IN_ROOTS.includes(key) ? squared(above) : above;
  const plain = (value: number) => value;
  const spread: RangePart[] = [
    { words: 'closing instant', down: predicted - scatter.low, up: scatter.high - predicted },
    ...moves.map(({ words, stated, changed }) => ({
      words,
      down: beyond(stated, changed, plain, 'low'),
      up: beyond(stated, changed, plain, 'high'),
    })),
  ];
  const read = (value: number) => share * Math.abs(value) + absolute;
  const parts = [...spread, { words: instrument, down: read(bottom), up: read(top) }];
  const width = top + read(top) - bottom + read(bottom);
  return {
    predicted,
    low: Math.max(least, bottom - read(bottom)),
    high: top + read(top),
    scatter,
    parts: parts
      .filter(({ down, up }) => down + up > SMALLEST_PART * width)
      .sort((a, b) => b.down + b.up - a.down - a.up),
    openBy: moves.filter(({ lost }) => lost).map(({ words }) => words),
  };
}

interface Ends {
  readonly low: number;
  readonly high: number;
}

function endsOf(values: readonly number[], otherwise: Ends): Ends {
  return values.length === 0 ? otherwise : { low: Math.min(...values), high: Math.max(...values) };
}

/** By how much changed data go beyond what is stated on one side. */
function beyond(
  stated: Ends,
  changed: readonly Ends[],
  by: (value: number) => number,
  side: 'low' | 'high',
): number {
  const away = side === 'low' ? -1 : 1;
  return Math.max(0, ...changed.map((end) => away * (by(end[side]) - by(stated[side]))));
}

/** At which closings the crests of start and plug stop are lowest and highest. */
function extremes(runs: readonly RunFigures[]): readonly [Closing, Closing] {
  const start = ordered(runs.map((run) => run.start?.startPeakCurrent.value ?? null));
  const plug = ordered(runs.map((run) => run.plug?.plugPeakCurrent.value ?? null));
  return [
    { start: start.lowest, plug: plug.lowest },
    { start: start.highest, plug: plug.highest },
  ];
}

interface Closing {
  readonly start: number;
  readonly plug: number;
}

function ordered(values: readonly (number | null)[]): { lowest: number; highest: number } {
  let [lowest, highest] = [0, 0];
  for (const [k, value] of values.entries()) {
    if (value === null) continue;
    if (value < (values[lowest] ?? Number.POSITIVE_INFINITY)) lowest = k;
    if (value > (values[highest] ?? Number.NEGATIVE_INFINITY)) highest = k;
  }
  return { lowest, highest };
}
