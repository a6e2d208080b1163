import type { Basin, Tried } from './basin.ts';
import { deviations } from './basin.ts';
import { cholesky, solvedBackward, solvedForward } from './cholesky.ts';
import { type SearchSpace, squaredLength } from './searchSpace.ts';

/** How far a model is trusted, in deviations of the trial points. */
const TRUST = 2;
/** Points over those that a full quadratic needs. */
const SURPLUS = 1.5;
/** Rounds along all axes; each brings the least of a well-shaped quadratic many times nearer. */
const SWEEPS = 40;
/** Added to the diagonal, share of it: directions that the points leave open stay as they are. */
const RIDGE = 1e-10;

/**
 * Where a quadratic through the trials round the best one of a local search is least, within the cube and as
 * far as it is trusted.
 *
 * @param trials all that are known
 * @returns null where there are too few
 */
export function modelPoint(basin: Basin, trials: readonly Tried[], space: SearchSpace): number[] | null {
  const centre = basin.best.point;
  const n = centre.length;
  const scale = deviations(basin).map((d) => TRUST * d);
  const needed = Math.ceil(SURPLUS * termsOf(centre).length);
  const near = trials
    .filter(({ cost }) => Number.isFinite(cost))
    .map(({ point, cost }) => {
      const way = space.way(centre, point).map((d, i) => d / scale[i]!);
      return { way, cost, far: squaredLength(way) };
    })
    .toSorted((a, b) => a.far - b.far)
    .slice(0, needed);
  // Points far off would make a model of another place.
  if (near.length < needed || near.at(-1)!.far > 4 * n) return null;
  const model = fitted(
    near.map(({ way, cost, far }) => ({
      terms: termsOf(way),
      cost: cost - basin.best.cost,
      weight: 1 / (0.1 + far),
    })),
  );
  if (model === null) return null;
  const bounds = centre.map((u, i) => {
    const { circular } = space.axes[i]!;
    return {
      low: circular ? -1 : Math.max(-1, -u / scale[i]!),
      high: circular ? 1 : Math.min(1, (1 - u) / scale[i]!),
    };
  });
  const least = leastOf(model, bounds);
  return space.inside(
    centre.map((u, i) => {
      // Exactly on the bound, whatever scaling rounds.
      if (!space.axes[i]!.circular && least[i] === bounds[i]!.low && least[i]! > -1) return 0;
      if (!space.axes[i]!.circular && least[i] === bounds[i]!.high && least[i]! < 1) return 1;
      return u + least[i]! * scale[i]!;
    }),
  );
}

/** 1, all coordinates, all products of two. */
function termsOf(x: readonly number[]): number[] {
  return [1, ...x, ...x.flatMap((a, i) => x.slice(i).map((b) => a * b))];
}

interface Equation {
  readonly terms: readonly number[];
  readonly cost: number;
  readonly weight: number;
}

/** Coefficients of least weighted squares. */
function fitted(equations: readonly Equation[]): number[] | null {
  const size = equations[0]!.terms.length;
  const normal = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const right = new Array<number>(size).fill(0);
  for (const { terms, cost, weight } of equations) {
    for (let i = 0; i < size; i++) {
      right[i]! += weight * terms[i]! * cost;
      for (let j = 0; j <= i; j++) normal[i]![j]! += weight * terms[i]! * terms[j]!;
    }
  }
  for (let i = 0; i < size; i++) normal[i]![i]! *= 1 + RIDGE;
  const lower = cholesky(normal);
  return lower === null ? null : solvedBackward(lower, solvedForward(lower, right));
}

/** Least of a quadratic between bounds, axis by axis from 0. */
function leastOf(
  model: readonly number[],
  bounds: readonly { readonly low: number; readonly high: number }[],
): number[] {
  const n = bounds.length;
  const slope = model.slice(1, n + 1);
  const curve = bounds.map(() => new Array<number>(n).fill(0));
  let term = n + 1;
  for (let i = 0; i < n; i++) {
    for (let j = i; j < n; j++) {
      const c = model[term++]!;
      curve[i]![j]! += c;
      curve[j]![i]! += c;
    }
  }
  const x = bounds.map(() => 0);
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    for (let i = 0; i < n; i++) {
      const { low, high } = bounds[i]!;
      let g = slope[i]!;
      for (let j = 0; j < n; j++) if (j !== i) g += curve[i]![j]! * x[j]!;
      const h = curve[i]![i]!;
      if (h > 0) x[i] = Math.min(high, Math.max(low, -g / h));
      else x[i] = g * low + (h * low * low) / 2 < g * high + (h * high * high) / 2 ? low : high;
    }
  }
  return x;
}
