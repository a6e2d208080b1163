/**
 * Weights with which samples of a periodic function, taken at irregular phases, give its mean: each stands for the half of both
 * gaps to its neighbours (the trapezoidal rule on the circle). Evenly spread phases weigh alike; equal phases share one weight.
 *
 * @param phases shares of the period; whole periods are taken off
 * @returns weights in the order of the phases, with the sum 1
 */
export function phaseWeights(phases: readonly number[]): readonly number[] {
  const count = phases.length;
  const order = phases
    .map((phase, index) => ({ at: phase - Math.floor(phase), index }))
    .sort((a, b) => a.at - b.at || a.index - b.index);
  const weights = new Array<number>(count).fill(0);
  for (const [i, { at, index }] of order.entries()) {
    const before = order[(i + count - 1) % count]!;
    const after = order[(i + 1) % count]!;
    const gaps = forward(before.at, at, i === 0) + forward(at, after.at, i === count - 1);
    weights[index] = gaps / 2;
  }
  return weights;
}

/** Way from one phase to the next, around the circle where the list ends. */
function forward(from: number, to: number, around: boolean): number {
  return around ? to - from + 1 : to - from;
}
