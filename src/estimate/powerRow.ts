/**
 * A power that exceeds a table's rating by less than this share still counts as that rating: a metric rating and its
 * counterpart in horsepower differ by up to 1.3 % (30 kW are 40.2 hp, 7.5 kW are 10.06 hp).
 */
const SAME_RATING = 0.02;

/**
 * Row of a table of standard ratings. A power between two ratings takes the row of the next larger one: the minima of the
 * standards fall with power, so that never more is claimed than the standard demands of the smaller machine.
 *
 * @param rows in ascending order of their first entry, the rating
 * @param power in the unit of the ratings
 * @returns null below half the first rating and above the last
 */
export function rowOfRating<Row extends readonly [number, ...unknown[]]>(
  rows: readonly Row[],
  power: number,
): Row | null {
  const smallest = rows[0]![0];
  if (power < smallest / 2) return null;
  return rows.find(([rating]) => power <= rating * (1 + SAME_RATING)) ?? null;
}
