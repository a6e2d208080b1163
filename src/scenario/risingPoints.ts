import type { Path } from './place.ts';
import type { Impossibility } from './starterView.ts';

/** What the second number of a table does as the first one rises. */
export interface TableLaw<K extends string> {
  /** Key of the second number. */
  readonly key: K;
  /** Whether it must fall from point to point, or only may not rise. */
  readonly falls: 'always' | 'never rises';
}

/** A point of which either number may have been refused. */
export type PartPoint<K extends string> =
  | ({ readonly current?: number | undefined } & { readonly [_ in K]?: number | undefined })
  | undefined;

/**
 * What is out of order in a table over rising currents.
 *
 * @param points as listed; where a number is undefined nothing is concluded from it
 * @param path of the list
 * @param law what the second number does
 */
export function pointsOutOfOrder<K extends string>(
  points: readonly PartPoint<K>[],
  path: Path,
  { key, falls }: TableLaw<K>,
): readonly Impossibility[] {
  return points.flatMap((point, index): Impossibility[] => {
    const before = index === 0 ? undefined : points[index - 1];
    const currents = [before?.current, point?.current] as const;
    const seconds = [before?.[key], point?.[key]] as const;
    const rises = isBelow(currents[0], currents[1]);
    const fits = falls === 'always' ? isBelow(seconds[1], seconds[0]) : !isBelow(seconds[0], seconds[1]);
    const found: Impossibility[] = [];
    if (areKnown(currents) && !rises)
      found.push({
        path: [...path, index, 'current'],
        message: 'is not above the current of the point before it',
        expected: 'ascending currents',
      });
    if (areKnown(seconds) && !fits)
      found.push({
        path: [...path, index, key],
        message:
          falls === 'always'
            ? `are not fewer than at the smaller current before`
            : `is longer than at the smaller current before`,
        expected: falls === 'always' ? `descending ${key}` : 'times that do not rise',
      });
    return found;
  });
}

type Pair = readonly [number | undefined, number | undefined];

function areKnown([a, b]: Pair): boolean {
  return a !== undefined && b !== undefined;
}

function isBelow(a: number | undefined, b: number | undefined): boolean {
  return a !== undefined && b !== undefined && a < b;
}
