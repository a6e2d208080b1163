import type { Tried } from './basin.ts';

/** Everything a search has tried. */
export interface TrialBook {
  readonly all: readonly Tried[];
  /** Those that were to cover the cube. */
  readonly explored: readonly Tried[];
  readonly enter: (tried: Tried, purpose: 'explored' | 'local') => void;
  /** The points without those that were tried, that are in `others`, or that come a second time. */
  readonly notYetTried: (points: readonly number[][], others?: readonly number[][]) => number[][];
  /** What is known of the points; those that were never tried are left out. */
  readonly costsOf: (points: readonly (readonly number[])[]) => Tried[];
  /** The first of those with the least cost; null where none could be used. */
  readonly best: () => Tried | null;
  /** Infinite where none could be used. */
  readonly least: () => number;
  /** Largest less least cost of those that could be used; 0 where none could. */
  readonly spread: () => number;
}

/** A book without entries. */
export function trialBook(): TrialBook {
  const all: Tried[] = [];
  const explored: Tried[] = [];
  const known = new Map<string, Tried>();
  let best: Tried | null = null;
  let least = Number.POSITIVE_INFINITY;
  let largest = Number.NEGATIVE_INFINITY;
  return {
    all,
    explored,
    enter: (tried, purpose) => {
      all.push(tried);
      if (purpose === 'explored') explored.push(tried);
      known.set(keyOf(tried.point), tried);
      if (!Number.isFinite(tried.cost)) return;
      if (tried.cost < least) best = tried;
      least = Math.min(least, tried.cost);
      largest = Math.max(largest, tried.cost);
    },
    notYetTried: (points, others = []) => {
      const asked = new Set(others.map(keyOf));
      return points.filter((point) => {
        const key = keyOf(point);
        if (known.has(key) || asked.has(key)) return false;
        asked.add(key);
        return true;
      });
    },
    costsOf: (points) => points.flatMap((point) => known.get(keyOf(point)) ?? []),
    best: () => best,
    least: () => least,
    spread: () => (largest > least ? largest - least : 0),
  };
}

function keyOf(point: readonly number[]): string {
  return point.join();
}
