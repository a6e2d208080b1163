import { exponential } from '../../numeric/exponential.ts';
import { logarithm } from '../../numeric/logarithm.ts';
import { randomStream } from '../draws/randomStream.ts';
import { sobolPoint } from '../draws/sobol.ts';
import { afterTrials, type Basin, basinAt, deviations, type Tried, trialPoints } from './basin.ts';
import { exploration } from './exploration.ts';
import { modelPoint } from './modelPoint.ts';
import { normalDraws } from './normalDraws.ts';
import { polish } from './polish.ts';
import { type SearchSpace, squaredLength } from './searchSpace.ts';
import { starts } from './starts.ts';
import { type TrialBook, trialBook } from './trialBook.ts';

/**
 * Runs asked for at once: enough for any number of workers that are likely, few enough for the search to
 * learn often.
 */
export const BATCH = 64;
/** Of the runs, the share that only explores before any local search begins. */
const EXPLORING = 0.3;
/** Of each later batch, the runs that go on exploring. */
const STILL_EXPLORING = 16;
/** Of the runs, the last share, which is kept for the polish of what was found. */
const POLISHING = 0.5;
/**
 * Local searches under way at once; more would leave each with too few trials per batch to shrink quickly.
 */
const AT_ONCE = 4;
/** First deviation of a local search, in spacings of the explored points. */
const FIRST_STEP = 0.4;
/** Nearest that two local searches begin, in the same. */
const APART = 1.5;
/**
 * Deviations at which a local search is at rest, share of the range: one that is not the best, and the best.
 */
const COARSE = 2e-3;
/** See COARSE; finer than any field of a scenario is known. */
const FINE = 1e-6;
/**
 * The search is over when so many local searches in a row have come to rest without coming upon anything
 * better.
 */
const IN_VAIN = 24;
/** Better is better by this share of the whole spread of what was found. */
const NOTABLY = 1e-6;
// The shares and numbers above: chosen by trial on test functions of 1 … 6 fields.

/** A local search under way. */
interface Live {
  readonly basin: Basin;
  readonly normal: () => number;
}

/** How far a search has come: what its next points are for, or `rest` when it is over by its own criterion. */
export type Stage = 'exploring' | 'descending' | 'polishing' | 'exploring on' | 'rest';

/** What a search asks for next. */
export interface Asked {
  readonly points: number[][];
  readonly stage: Stage;
}

/**
 * Global search for the least cost in the unit cube: exploration, then local searches from the best of what
 * was explored, then a polish of the best that they found. Runs that the polish leaves go to more local
 * searches, and what they find is polished again. Yields points, none twice, and is told their costs
 * (infinite: cannot be used). It is over after `runs` points, or earlier when 24 local searches in a row
 * have come to rest in vain and the polish has.
 *
 * @param runs most points
 * @param seed whole number, 0 … 2^32 − 1
 * @returns what it was at when it ended
 */
export function* searchPlan(
  space: SearchSpace,
  runs: number,
  seed: number,
): Generator<Asked, Stage, readonly number[]> {
  const n = space.axes.length;
  const book = trialBook();
  const cover = exploration(space, (index) => sobolPoint(index, n, seed));
  const taken: Tried[] = [];
  const exploringRuns = Math.max(1, Math.round((EXPLORING * runs) / BATCH)) * BATCH;
  const globalRuns = Math.max(1, Math.round(((1 - POLISHING) * runs) / BATCH)) * BATCH;
  /** Cost of what was polished to rest. */
  let polished = Number.POSITIVE_INFINITY;
  let live: Live[] = [];
  let begun = 0;
  let inVain = 0;
  let stage: Stage = 'exploring';
  const isPolished = () => polished - book.least() <= NOTABLY * book.spread();

  while (book.all.length < runs) {
    const spacing = exponential(-logarithm(Math.max(1, book.explored.length)) / n);
    const isOver = inVain >= IN_VAIN && live.every(({ basin }) => basin.best.cost > book.least());
    if ((isOver || book.all.length >= globalRuns) && book.spread() > 0 && !isPolished()) {
      const at = { space, book, runs, normal: normalDraws(randomStream(seed, begun++)) };
      if (yield* inStage('polishing', polish(FIRST_STEP * spacing, at))) polished = book.least();
      stage = 'polishing';
      continue;
    }
    if (isOver) return 'rest';
    const size = Math.min(BATCH, runs - book.all.length);
    const isCovered = book.explored.length >= exploringRuns;
    if (isCovered) {
      const barred = [...taken, ...live.map(({ basin }) => basin.best)];
      for (const start of starts(book.explored, barred, APART * spacing, AT_ONCE - live.length, space)) {
        live.push({
          basin: basinAt(start, FIRST_STEP * spacing),
          normal: normalDraws(randomStream(seed, begun++)),
        });
        taken.push(start);
      }
      live = live.toSorted((a, b) => a.basin.best.cost - b.basin.best.cost);
    }
    const share = Math.floor((size - Math.min(size, STILL_EXPLORING)) / Math.max(1, live.length));
    const trials = live.map((search) => trialsOf(search, share, book, space));
    const local = book.notYetTried(trials.flat()).slice(0, size);
    const further: number[][] = [];
    while (local.length + further.length < size)
      further.push(...book.notYetTried([cover.next().value], local));
    stage = isPolished() ? 'exploring on' : isCovered ? 'descending' : 'exploring';
    const costs = yield { points: [...local, ...further], stage };
    const before = book.least();
    local.forEach((point, i) => {
      book.enter({ point, cost: costs[i]! }, 'local');
    });
    further.forEach((point, i) => {
      book.enter({ point, cost: costs[local.length + i]! }, 'explored');
    });
    if (before - book.least() > NOTABLY * book.spread()) inVain = 0;

    const moved = live.map(({ basin, normal }, i) => {
      const known = book.costsOf(trials[i]!);
      return { basin: known.length < 2 ? basin : afterTrials(basin, known, space), normal };
    });
    live = moved.filter(({ basin }) => !isAtRest(basin, book.least()) && !isTwin(basin, moved, space));
    for (const { basin } of moved) if (!live.some((search) => search.basin === basin)) taken.push(basin.best);
    inVain += moved.length - live.length;
  }
  if (isPolished()) return 'exploring on';
  // It came upon something better at the very end.
  return stage === 'exploring on' ? 'descending' : stage;
}

function* inStage<Result>(
  stage: Stage,
  inner: Generator<number[][], Result, readonly number[]>,
): Generator<Asked, Result, readonly number[]> {
  let step = inner.next([]);
  while (step.done !== true) step = inner.next(yield { points: step.value, stage });
  return step.value;
}

/** The next trials of a local search: the least of its model, where there is one, and draws. */
function trialsOf({ basin, normal }: Live, count: number, book: TrialBook, space: SearchSpace): number[][] {
  const model = modelPoint(basin, book.all, space);
  const points = trialPoints(basin, count - (model === null ? 0 : 1), space, normal);
  return model === null ? points : [model, ...points];
}

function isAtRest(basin: Basin, least: number): boolean {
  return basin.flat || Math.max(...deviations(basin)) < (basin.best.cost <= least ? FINE : COARSE);
}

/** Whether a better local search is already where this one is. */
function isTwin(basin: Basin, all: readonly Live[], space: SearchSpace): boolean {
  const width = Math.max(...deviations(basin));
  const place = all.findIndex((search) => search.basin === basin);
  return all.some(({ basin: other }, i) => {
    const isBetter = other.best.cost < basin.best.cost || (other.best.cost === basin.best.cost && i < place);
    return isBetter && squaredLength(space.way(other.best.point, basin.best.point)) < width * width;
  });
}
