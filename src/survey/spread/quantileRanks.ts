/**
 * Below this share of the largest probability a binomial distribution is cut off; what is left out is far
 * below a last place.
 */
const NEGLIGIBLE = 1e-25;

/** Ranks, from 1, of the ordered values that estimate a quantile and bound it. */
export interface QuantileRanks {
  /** The quantile is the mean of the values of these two ranks, which are the same where one value is it. */
  readonly estimate: readonly [number, number];
  /** Rank of the lower bound; null: too few values for one. */
  readonly low: number | null;
  /** Rank of the upper bound; null: too few values for one. */
  readonly high: number | null;
}

/**
 * Which of n ordered values are a quantile and the bounds of its confidence interval, whatever the
 * distribution (Conover, Practical Nonparametric Statistics, section 3.2): the number of values below the
 * quantile is binomial.
 *
 * The quantile itself is the value of rank ⌈n·q⌉, or the mean of the ranks n·q and n·q + 1 where n·q is
 * whole.
 *
 * @param n number of independent values, at least 1
 * @param percent the quantile, whole percent, 1 … 99
 * @param tail most probability that the quantile lies beyond a bound, each side: 0.025 for an interval of 95
 *   %
 */
export function quantileRanks(n: number, percent: number, tail: number): QuantileRanks {
  const whole = (n * percent) % 100 === 0;
  const rank = whole ? (n * percent) / 100 : Math.ceil((n * percent) / 100);
  const low = lowerRank(n, percent / 100, tail);
  // Counted from the other end an upper bound is a lower one.
  const mirrored = lowerRank(n, (100 - percent) / 100, tail);
  return {
    estimate: [rank, whole ? rank + 1 : rank],
    low,
    high: mirrored === null ? null : n + 1 - mirrored,
  };
}

/**
 * The largest rank r whose value exceeds the quantile with a probability of `tail` at most: P(X ≤ r − 1) ≤
 * tail.
 */
function lowerRank(n: number, share: number, tail: number): number | null {
  const { first, weights, total } = binomialWeights(n, share);
  let below = 0;
  let k = 0;
  while (k < weights.length && below + weights[k]! <= tail * total) below += weights[k++]!;
  return first + k > 0 ? first + k : null;
}

/**
 * Binomial probabilities up to a common factor, from the most probable number outwards by their ratios, so
 * that nothing overflows for any n. Some 22·√(n·p·(1 − p)) numbers; relative error of a tail below 1e-11 for
 * n up to 1e7.
 */
function binomialWeights(n: number, share: number): { first: number; weights: number[]; total: number } {
  const odds = share / (1 - share);
  const mode = Math.min(n, Math.floor((n + 1) * share));
  const down: number[] = [];
  for (let k = mode, w = 1; k > 0; k--) {
    w *= k / ((n - k + 1) * odds);
    if (w < NEGLIGIBLE) break;
    down.push(w);
  }
  const up: number[] = [];
  for (let k = mode, w = 1; k < n; k++) {
    w *= ((n - k) * odds) / (k + 1);
    if (w < NEGLIGIBLE) break;
    up.push(w);
  }
  const first = mode - down.length;
  const weights = [...down.toReversed(), 1, ...up];
  return { first, weights, total: weights.reduce((sum, w) => sum + w, 0) };
}
