import type { PhaseName } from '../scenario/scenario.ts';
import { crossings } from './crossing.ts';
import { integral, type Quadrature } from './quadrature.ts';

/** ∫|i| dt of one line from `from` to `to` (s), C: the signed charge of each stretch between current zeros, without its sign. */
export function absoluteCharge(quadrature: Quadrature, phase: PhaseName, from: number, to: number): number {
  if (to <= from) return 0;
  const name = `i${phase}` as const;
  const stops = [from, ...crossings(quadrature, name, 0, 'either', from, to), to];
  let sum = 0;
  for (let i = 1; i < stops.length; i++)
    sum += Math.abs(integral(quadrature, name, stops[i - 1]!, stops[i]!));
  return sum;
}
