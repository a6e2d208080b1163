import { inverseNormalDistribution, normalDistribution } from '../../numeric/normalDistribution.ts';
import { raised } from '../../numeric/raised.ts';
import type { Spread } from '../spec/survey.ts';
import { listedCount, listedValue } from './listed.ts';

/**
 * Least probability that a cut normal distribution may have between its bounds before the cut: below it
 * digits are lost.
 */
const LEAST_PROBABILITY = 1e-300;

/**
 * Value of a field below which it lies with probability `u`: the inverse of its distribution function. Of a
 * list or a grid each number is as likely as the others. Never outside the bounds; errors a few units in
 * the last place of the larger bound.
 *
 * @param u between 0 and 1, both excluded
 * @returns in the spread's unit
 * @throws RangeError when u is not between 0 and 1, or the bounds of a normal distribution lie so far out
 *   that nothing is left between them
 */
export function quantileOf(spread: Spread, u: number): number {
  if (!(u > 0 && u < 1))
    throw new RangeError(`${u} is no probability of a quantile: between 0 and 1 would be right`);
  switch (spread.kind) {
    case 'values':
    case 'grid':
      return listedValue(spread, Math.floor(u * listedCount(spread)));
    case 'uniform':
      return within(spread, spread.from + u * (spread.to - spread.from));
    case 'logUniform':
      return within(spread, spread.from * raised(spread.to / spread.from, u));
    case 'normal':
      return within(spread, spread.mean + spread.deviation * cutNormal(spread, u));
    case 'triangular':
      return within(spread, triangular(spread, u));
  }
}

/** Undoes what rounding may carry over a bound. */
function within({ from, to }: { readonly from: number; readonly to: number }, value: number): number {
  return Math.min(Math.max(value, from), to);
}

/** Quantile of a cut normal distribution in deviations from its mean. */
function cutNormal(spread: Extract<Spread, { kind: 'normal' }>, u: number): number {
  const from = (spread.from - spread.mean) / spread.deviation;
  const to = (spread.to - spread.mean) / spread.deviation;
  // Above the mean probabilities are near to 1 and lose digits: there the mirror image is used.
  return from > 0 ? -cutStandard(-to, -from, 1 - u) : cutStandard(from, to, u);
}

/** The same of the standard normal distribution with a lower bound that is not above 0. */
function cutStandard(from: number, to: number, u: number): number {
  const below = normalDistribution(from);
  const above = normalDistribution(-to);
  const left = to > 0 ? 1 - below - above : normalDistribution(to) - below;
  if (!(left > LEAST_PROBABILITY))
    throw new RangeError(
      `normal distribution from ${from} to ${to} deviations (or mirrored): nothing is left to draw from`,
    );
  const p = below + u * left;
  return p <= 0.5 ? inverseNormalDistribution(p) : -inverseNormalDistribution(above + (1 - u) * left);
}

/** Quantile of a triangular distribution: the roots of its two parabolas. */
function triangular({ from, peak, to }: Extract<Spread, { kind: 'triangular' }>, u: number): number {
  const rise = peak - from;
  const whole = to - from;
  return u * whole < rise
    ? from + Math.sqrt(u * whole * rise)
    : to - Math.sqrt((1 - u) * whole * (to - peak));
}
