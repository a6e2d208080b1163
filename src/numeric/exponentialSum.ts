import { bisect } from './bisect.ts';
import { exponential } from './exponential.ts';

/** Σ a_k·e^(−λ_k·t). */
export interface ExponentialSum {
  /** a_k */
  readonly factors: readonly number[];
  /** λ_k, 1/s */
  readonly rates: readonly number[];
}

/** Value at t. */
export function exponentialSum({ factors, rates }: ExponentialSum, t: number): number {
  return factors.reduce((sum, a, k) => sum + a * exponential(-rates[k]! * t), 0);
}

/**
 * Every t in (from, to) at which a sum of exponentials changes its sign, in order. With n terms there are at most n − 1: times
 * e^(λ₁·t) the sum has the derivative of a sum of n − 1 terms (λ₁ drops out), and between the zeros of that it is monotonic.
 */
export function zerosOfExponentialSum(sum: ExponentialSum, from: number, to: number): number[] {
  const { factors, rates } = sum;
  const [lambda] = rates;
  if (lambda === undefined || rates.length < 2) return [];
  const reduced = {
    factors: factors.slice(1).map((a, k) => a * (lambda - rates[k + 1]!)),
    rates: rates.slice(1),
  };
  const f = (t: number) => exponentialSum(sum, t);
  const edges = [from, ...zerosOfExponentialSum(reduced, from, to), to];
  return edges.slice(1).flatMap((b, i) => {
    const a = edges[i]!;
    return f(a) * f(b) < 0 ? [bisect(f, a, b)] : [];
  });
}
