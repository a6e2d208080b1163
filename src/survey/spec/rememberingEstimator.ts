import type { CircuitEstimator } from '../../scenario/nameplate.ts';

/** Estimates kept; a survey that does not vary the machine asks for one. */
const REMEMBERED = 64;

/**
 * An estimator that does not estimate the same machine twice in a row of scenarios.
 *
 * @param estimator a pure function of its argument
 */
export function rememberingEstimator(estimator: CircuitEstimator): CircuitEstimator {
  return {
    fromNameplate: remembering((nameplate) => estimator.fromNameplate(nameplate)),
    fromTests: remembering((readings) => estimator.fromTests(readings)),
  };
}

function remembering<A, R>(estimate: (about: A) => R): (about: A) => R {
  const known = new Map<string, R>();
  return (about) => {
    // Shortest number texts read back to the same bits, but for −0, which no machine has.
    const key = JSON.stringify(about);
    const before = known.get(key);
    if (before !== undefined) return before;
    const result = estimate(about);
    known.set(key, result);
    for (const old of known.keys()) {
      if (known.size <= REMEMBERED) break;
      known.delete(old);
    }
    return result;
  };
}
