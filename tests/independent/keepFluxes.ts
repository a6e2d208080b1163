/** Newton's steps end when the fluxes agree to this fraction of the largest. */
const ACCURACY = 1e-15;
/** Where rounding ends them earlier, they must agree to this fraction. */
const FAILURE = 1e-12;
const MOST_STEPS = 60;
const MOST_HALVINGS = 30;

/** The relation between currents and fluxes in a circuit. */
export interface FluxProblem {
  /** Flux still missing around the loops at a state, into `out`; returns its size, Wb. */
  missing(y: Float64Array, out: Float64Array): number;
  /** Currents that the incremental inductances at a state give for a flux, into `out`. */
  currentsFor(y: Float64Array, flux: Float64Array, out: Float64Array): void;
}

/**
 * Changes the first `count` entries of a state, the currents, until no flux is missing.
 * @param scale size of the fluxes, Wb
 */
export function keepFluxes(y: Float64Array, count: number, scale: number, problem: FluxProblem): void {
  const flux = new Float64Array(count);
  const step = new Float64Array(count);
  let error = problem.missing(y, flux);
  for (let n = 0; n < MOST_STEPS && error > ACCURACY * scale; n++) {
    problem.currentsFor(y, flux, step);
    const from = y.slice(0, count);
    // Where the iron saturates a whole step may lead too far.
    let share = 1;
    let next = Number.POSITIVE_INFINITY;
    for (let half = 0; half < MOST_HALVINGS && !(next < error); half++) {
      for (let k = 0; k < count; k++) y[k] = from[k]! + share * step[k]!;
      next = problem.missing(y, flux);
      share /= 2;
    }
    if (!(next < error)) {
      y.set(from);
      break;
    }
    error = next;
  }
  if (error > FAILURE * scale) throw new Error('no currents that keep the fluxes after a chop');
}
