import type { Tried } from './basin.ts';
import type { SearchSpace } from './searchSpace.ts';

/**
 * Where local searches are worth beginning: trials that have none better near them, the best first.
 *
 * @param explored trials that cover the cube
 * @param taken where searches began or are by now; near one only what is better is worth another search
 * @param distance what is near, share of the range
 * @param most how many are wanted
 */
export function starts(
  explored: readonly Tried[],
  taken: readonly Tried[],
  distance: number,
  most: number,
  space: SearchSpace,
): Tried[] {
  const found: Tried[] = [];
  const ranked = explored
    .filter(({ cost }) => Number.isFinite(cost))
    // Sorting is stable: of equal ones the first explored comes first.
    .toSorted((a, b) => a.cost - b.cost);
  for (const [rank, candidate] of ranked.entries()) {
    if (found.length >= most) break;
    const rules = (other: Tried) => space.isWithin(distance, other.point, candidate.point);
    if (taken.some((other) => other.cost <= candidate.cost && rules(other))) continue;
    let isBest = true;
    for (let i = 0; i < rank && isBest; i++) isBest = !rules(ranked[i]!);
    if (isBest) found.push(candidate);
  }
  return found;
}
