import { exponential } from '../../numeric/exponential.ts';
import { logarithm } from '../../numeric/logarithm.ts';
import { raised } from '../../numeric/raised.ts';
import { cholesky, solvedForward, times } from './cholesky.ts';
import { type SearchSpace, squaredLength } from './searchSpace.ts';

/** A point of the unit cube and what it costs. */
export interface Tried {
  readonly point: readonly number[];
  readonly cost: number;
}

/**
 * A local search: a normal distribution of trial points that moves, turns, stretches and shrinks after the
 * better half of them. Evolution strategy with covariance matrix adaptation, N. Hansen, The CMA Evolution
 * Strategy: A Tutorial, arXiv:1604.00772, with its default constants; the square root of the matrix is its
 * triangular factor, which suits as well.
 */
export interface Basin {
  readonly centre: readonly number[];
  /** Overall size of the distribution. */
  readonly step: number;
  /** Its covariances for a step of 1. */
  readonly shape: readonly (readonly number[])[];
  readonly stepPath: readonly number[];
  readonly shapePath: readonly number[];
  readonly generation: number;
  readonly best: Tried;
  /** Nothing distinguished the last trial points. */
  readonly flat: boolean;
}

/** A local search that begins at a point, with equal deviations of `step` along all axes. */
export function basinAt(best: Tried, step: number): Basin {
  const zero = best.point.map(() => 0);
  const shape = zero.map((_, i) => zero.map((_, j) => (i === j ? 1 : 0)));
  return {
    centre: best.point,
    step,
    shape,
    stepPath: zero,
    shapePath: zero,
    generation: 0,
    best,
    flat: false,
  };
}

/** Deviation of the trial points along each axis. */
export function deviations({ step, shape }: Basin): number[] {
  return shape.map((row, i) => step * Math.sqrt(row[i]!));
}

/**
 * Trial points. What falls outside the cube is put on its surface: an extreme on the bounds is met exactly.
 *
 * @param normal draws of the standard normal distribution
 */
export function trialPoints(
  { centre, step, shape }: Basin,
  count: number,
  space: SearchSpace,
  normal: () => number,
): number[][] {
  const lower = cholesky(shape)!;
  return Array.from({ length: count }, () => {
    const move = times(
      lower,
      centre.map(() => normal()),
    );
    return space.inside(centre.map((u, i) => u + step * move[i]!));
  });
}

/**
 * The local search after its trial points, or other points near, are known.
 *
 * @param tried at least two
 */
export function afterTrials(basin: Basin, tried: readonly Tried[], space: SearchSpace): Basin {
  const n = basin.centre.length;
  const ranked = tried.toSorted((a, b) => a.cost - b.cost);
  const usable = ranked.filter(({ cost }) => Number.isFinite(cost));
  const best = usable.length > 0 && ranked[0]!.cost < basin.best.cost ? ranked[0]! : basin.best;
  const generation = basin.generation + 1;
  // No trial could be used: nearer to where it began.
  if (usable.length === 0)
    return { ...basin, centre: basin.best.point, step: basin.step / 2, generation, flat: false };
  const flat = usable.length === tried.length && ranked[0]!.cost === ranked.at(-1)!.cost;

  const { weights, parents } = weightsOf(tried.length, usable.length);
  const { pathRate, damping, shapePathRate, oneRate, manyRate, meanLength } = constantsOf(n, parents);
  const lower = cholesky(basin.shape)!;
  const moves = weights.map((_, i) => moveTo(basin, ranked[i]!.point, lower, meanLength, space));
  const mean = basin.centre.map((_, i) => weights.reduce((sum, w, k) => sum + w * moves[k]![i]!, 0));

  const straight = solvedForward(lower, mean);
  const kept = Math.sqrt(pathRate * (2 - pathRate) * parents);
  const stepPath = basin.stepPath.map((p, i) => (1 - pathRate) * p + kept * straight[i]!);
  const length = Math.sqrt(squaredLength(stepPath));
  const settled = Math.sqrt(1 - raised(1 - pathRate, 2 * generation));
  const calm = length / settled < (1.4 + 2 / (n + 1)) * meanLength;
  const along = calm ? Math.sqrt(shapePathRate * (2 - shapePathRate) * parents) : 0;
  const shapePath = basin.shapePath.map((p, i) => (1 - shapePathRate) * p + along * mean[i]!);
  const lost = calm ? 0 : oneRate * shapePathRate * (2 - shapePathRate);
  const shape = basin.shape.map((row, i) =>
    row.map((c, j) => {
      const many = weights.reduce((sum, w, k) => sum + w * moves[k]![i]! * moves[k]![j]!, 0);
      return (1 - oneRate - manyRate + lost) * c + oneRate * shapePath[i]! * shapePath[j]! + manyRate * many;
    }),
  );
  const growth = exponential(Math.min(1, (pathRate / damping) * (length / meanLength - 1)));
  return {
    centre: space.inside(basin.centre.map((u, i) => u + basin.step * mean[i]!)),
    step: Math.min(LARGEST_STEP, basin.step * growth),
    // Rounding can leave a needle of no width; then the search goes on from a sphere.
    shape: cholesky(shape) === null ? basinAt(best, 1).shape : shape,
    stepPath,
    shapePath,
    generation,
    best,
    flat,
  };
}

/** Share of the range; a wider distribution would lie on the bounds for the most part. */
const LARGEST_STEP = 0.5;

/**
 * The way to a point in steps; a far one, which the distribution would not have drawn, is taken as less far
 * (Hansen, arXiv:1110.4181).
 */
function moveTo(
  { centre, step }: Basin,
  point: readonly number[],
  lower: readonly (readonly number[])[],
  meanLength: number,
  space: SearchSpace,
): number[] {
  const move = space.way(centre, point).map((d) => d / step);
  const length = Math.sqrt(squaredLength(solvedForward(lower, move)));
  const n = centre.length;
  const longest = meanLength + (2 * n) / (n + 2);
  return length > longest ? move.map((d) => (d * longest) / length) : move;
}

/** Weights of the better half, the best first, and how many equal ones they are worth. */
function weightsOf(count: number, usable: number): { weights: number[]; parents: number } {
  const half = (count + 1) / 2;
  const better = Math.max(1, Math.min(Math.floor(count / 2), usable));
  const raw = Array.from({ length: better }, (_, i) => logarithm(half) - logarithm(i + 1));
  const sum = raw.reduce((a, b) => a + b, 0);
  const weights = sum > 0 ? raw.map((w) => w / sum) : [1];
  return { weights, parents: 1 / squaredLength(weights) };
}

function constantsOf(n: number, parents: number) {
  const pathRate = (parents + 2) / (n + parents + 5);
  const oneRate = 2 / ((n + 1.3) * (n + 1.3) + parents);
  return {
    pathRate,
    damping: 1 + 2 * Math.max(0, Math.sqrt((parents - 1) / (n + 1)) - 1) + pathRate,
    shapePathRate: (4 + parents / n) / (n + 4 + (2 * parents) / n),
    oneRate,
    manyRate: Math.min(1 - oneRate, (2 * (parents - 2 + 1 / parents)) / ((n + 2) * (n + 2) + parents)),
    /** Mean length of a vector of n standard normal draws. */
    meanLength: Math.sqrt(n) * (1 - 1 / (4 * n) + 1 / (21 * n * n)),
  };
}
