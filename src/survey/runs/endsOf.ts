import type { Spread } from '../spec/survey.ts';

/** Smallest and largest value that a field takes, in its unit. */
export function endsOf(spread: Spread): readonly [number, number] {
  if (spread.kind !== 'values') return [spread.from, spread.to];
  return [Math.min(...spread.values), Math.max(...spread.values)];
}
