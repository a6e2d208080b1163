import { raised } from '../../numeric/raised.ts';
import type { Spread } from '../spec/survey.ts';

/** A spread that is a list of numbers: as written, or a grid. */
export type ListedSpread = Extract<Spread, { kind: 'values' | 'grid' }>;

/**
 * Decimal digits of a grid's numbers between its ends: hides the rounding of the computation, 3·0.1 =
 * 0.30000000000000004.
 */
const GRID_DIGITS = 14;

/** Whether the spread is a list of numbers. */
export function isListed(spread: Spread): spread is ListedSpread {
  return spread.kind === 'values' || spread.kind === 'grid';
}

/** How many numbers the list has. */
export function listedCount(spread: ListedSpread): number {
  return spread.kind === 'values' ? spread.values.length : spread.count;
}

/**
 * A number of the list: as written, or of a grid: its ends exactly, between them equal steps or equal
 * ratios, to 14 digits.
 *
 * @param index 0 … count − 1
 */
export function listedValue(spread: ListedSpread, index: number): number {
  if (spread.kind === 'values') return spread.values[index]!;
  const { from, to, count, spacing } = spread;
  const last = count - 1;
  if (index === 0) return from;
  if (index === last) return to;
  const between =
    spacing === 'linear'
      ? (from * (last - index) + to * index) / last
      : from * raised(to / from, index / last);
  const short = Number(between.toPrecision(GRID_DIGITS));
  return Math.min(Math.max(short, Math.min(from, to)), Math.max(from, to));
}
