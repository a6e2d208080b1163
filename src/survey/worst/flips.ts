import type { Tried } from './basin.ts';
import type { SearchSpace } from './searchSpace.ts';

/** A point with one coordinate at another place. */
export interface Flip {
  readonly axis: number;
  readonly to: number;
  readonly point: number[];
}

/** Of a ring, which has no ends: a quarter, half and three quarters of the way round. */
const ROUND = [0.25, 0.5, 0.75];
/** Most points that combine flips. */
const MOST_TOGETHER = 16;

/** A point with each coordinate in turn at its ends. */
export function flips(point: readonly number[], space: SearchSpace): Flip[] {
  return point.flatMap((u, axis) => {
    const places = space.axes[axis]!.circular ? ROUND.map((turn) => u + turn) : [0, 1];
    return places.flatMap((place) => {
      const other = space.inside(point.with(axis, place));
      return other[axis] === u ? [] : [{ axis, to: other[axis]!, point: other }];
    });
  });
}

/**
 * Combinations of flips: all that helped at once, then pairs, the best two first.
 *
 * @param known flips and what they cost
 */
export function together(best: Tried, known: readonly (Flip & { readonly cost: number })[]): number[][] {
  const ranked = known.filter(({ cost }) => Number.isFinite(cost)).toSorted((a, b) => a.cost - b.cost);
  // The better one of each axis.
  const chosen = ranked.filter(({ axis }, i) => ranked.findIndex((flip) => flip.axis === axis) === i);
  const helped = chosen.filter(({ cost }) => cost < best.cost);
  const all = helped.reduce<number[]>((point, { axis, to }) => point.with(axis, to), [...best.point]);
  const pairs = ranked.flatMap((first, i) =>
    ranked
      .slice(0, i)
      .filter(({ axis }) => axis !== first.axis)
      .map((second) => first.point.with(second.axis, second.to)),
  );
  return [...(helped.length > 2 ? [all] : []), ...pairs].slice(0, MOST_TOGETHER);
}
