import { basinAt, type Tried, trialPoints } from './basin.ts';
import { flips, together } from './flips.ts';
import { modelPoint } from './modelPoint.ts';
import { type SearchSpace, squaredLength } from './searchSpace.ts';
import type { TrialBook } from './trialBook.ts';

/** What is asked for, and in return the costs. */
type Asking<Result> = Generator<number[][], Result, readonly number[]>;

/** What a polish works with. */
export interface Polishing {
  readonly space: SearchSpace;
  readonly book: TrialBook;
  /** Draws of the standard normal distribution. */
  readonly normal: () => number;
  /** Most points that the book may come to hold. */
  readonly runs: number;
}

/** Step at which a polish is at rest, share of the range. */
const REST = 1e-5;
/** Step down to which both places are polished before they are compared, in the same. */
const COMPARED = 2e-3;
/** A step that led nowhere is followed by one so many times as long. */
const SHRUNK = 0.3;
/** A step that led at least this far along some axis, in steps, is not made shorter. */
const FAR = 0.5;
/** Nearest that the second place lies, share of the range: another basin as a rule. */
const SEPARATE = 0.15;
/** Better is better by this share of the whole spread of what was found. */
const NOTABLY = 1e-7;
// The numbers above: chosen by trial on test functions and on the torque peaks of real runs.

/**
 * Makes the best that is known as good as it can be made: steps of many lengths round it and round the best
 * one far from it, its fields at their other ends, then ever shorter steps round the better of all.
 *
 * @param step length of the first steps, share of the range
 * @returns whether it came to rest; otherwise the runs were used up
 */
export function* polish(step: number, at: Polishing): Asking<boolean> {
  const { book, space } = at;
  let best = book.best()!;
  const second = book.all
    .filter(
      ({ point, cost }) =>
        Number.isFinite(cost) && squaredLength(space.way(best.point, point)) > SEPARATE * SEPARATE,
    )
    .reduce<Tried | null>(
      (least, tried) => (least === null || tried.cost < least.cost ? tried : least),
      null,
    );
  yield* descent(best, step, COMPARED, at);
  if (second !== null) yield* descent(second, step, COMPARED, at);
  do {
    best = book.best()!;
    yield* flipped(best, at);
    if (book.best() !== best) yield* descent(book.best()!, step, COMPARED, at);
  } while (book.best() !== best && book.all.length < at.runs);
  // Askew valleys: short steps lead nowhere, long ones with what was learnt lead on.
  let before: number;
  let first = COMPARED;
  do {
    before = book.least();
    yield* descent(book.best()!, first, REST, at);
    first = step;
  } while (before - book.least() > NOTABLY * book.spread() && book.all.length < at.runs);
  return book.all.length < at.runs;
}

/**
 * Compass search with remembered direction: steps both ways along every axis, once more the way that led on,
 * some draws, and the least of a model of what is near; shorter steps where none led on. R. Hooke and
 * T. A. Jeeves, Journal of the ACM 8 (1961) 212.
 */
function* descent(start: Tried, from: number, to: number, at: Polishing): Asking<void> {
  const { space, book, normal } = at;
  let best = start;
  let way: number[] | null = null;
  for (let step = from; step >= to && book.all.length < at.runs; ) {
    const round = basinAt(best, step);
    const model = modelPoint(round, book.all, space);
    const tried = yield* asked(
      [
        ...(model === null ? [] : [model]),
        ...(way === null ? [] : [moved(best.point, way, 1, space), moved(best.point, way, 2, space)]),
        ...compass(best.point, step, space),
        ...trialPoints(round, best.point.length, space, normal),
      ],
      at,
    );
    const better = leastOf(tried);
    way = null;
    if (better !== null && better.cost < best.cost) {
      way = space.way(best.point, better.point);
      best = better;
    }
    const length = way === null ? 0 : Math.max(...way.map(Math.abs));
    if (length < FAR * step) step *= SHRUNK;
  }
}

/** Every field at its ends, then what helped, and what came next to helping, together. */
function* flipped(best: Tried, at: Polishing): Asking<void> {
  const single = flips(best.point, at.space);
  yield* asked(
    single.map(({ point }) => point),
    at,
  );
  const known = single.flatMap((flip) => {
    const [tried] = at.book.costsOf([flip.point]);
    return tried === undefined ? [] : [{ ...flip, cost: tried.cost }];
  });
  yield* asked(together(best, known), at);
}

/** Has the points tried that are new, as far as there are runs. */
function* asked(points: readonly number[][], { book, runs }: Polishing): Asking<Tried[]> {
  const wanted = book.notYetTried(points).slice(0, runs - book.all.length);
  if (wanted.length === 0) return [];
  const costs = yield wanted;
  return wanted.map((point, i) => {
    const tried = { point, cost: costs[i]! };
    book.enter(tried, 'local');
    return tried;
  });
}

function compass(point: readonly number[], step: number, space: SearchSpace): number[][] {
  return point.flatMap((u, i) => [-step, step].map((d) => space.inside(point.with(i, u + d))));
}

function moved(point: readonly number[], way: readonly number[], times: number, space: SearchSpace) {
  return space.inside(point.map((u, i) => u + times * way[i]!));
}

function leastOf(tried: readonly Tried[]): Tried | null {
  return tried.reduce<Tried | null>(
    (least, one) => (least === null || one.cost < least.cost ? one : least),
    null,
  );
}
