import { Solver } from '#odex';
import type { OdeProblem, SolverOptions } from './integrate.ts';
import { interpolant } from './interpolant.ts';
import { SimulationError } from './simulationError.ts';
import { type Step, stepOf } from './step.ts';
import { withOwnPowers } from './withOwnPowers.ts';

/**
 * First trial step, s. The solver takes no shorter one; error control shortens it where the solution needs it.
 */
const FIRST_STEP = 1e-4;

/**
 * odex's choice of interpolation formula, 1 … 6; the interpolant's degree is 2k + 1 less this, for k columns. Events and
 * peaks are read from the interpolant. Measured on the benchmark's plug stop at tolerance 1e-8: errors of peaks and stopping
 * time 4e-9 with 2 against 2e-8 with the solver's default 4, for 4 % more evaluations and 5 % fewer steps.
 */
const INTERPOLATION_DEGREE = 2;

/**
 * The same by extrapolation with the library odex, the reference that `integrate` is checked against. Everything that has to be known
 * about odex is in this file: one Solver per call (two live generators on one Solver corrupt each other),
 * plain arrays, end time 0 means "no end" there, NaN is accepted there silently and refused here, powers are the engine's
 * there and our own here.
 *
 * @throws SimulationError nonFiniteValue, stepLimit
 */
export function* integrateByOdex(
  problem: OdeProblem,
  t0: number,
  y0: readonly number[],
  tEnd: number,
  options: SolverOptions,
): Generator<Step, undefined> {
  const { stats } = options;
  const n = problem.size;
  const rhs = (t: number, y: number[], dydt: number[]): undefined => {
    stats.evaluations++;
    problem.derivatives(t, y, dydt);
    let sum = 0;
    for (let i = 0; i < n; i++) sum += dydt[i]!;
    if (!Number.isFinite(sum)) {
      const bad = Array.from({ length: n }, (_, i) => i).find((i) => !Number.isFinite(dydt[i]));
      throw new SimulationError(
        'nonFiniteValue',
        t,
        `state ${bad ?? '?'} of ${n} has the derivative ${dydt[bad ?? 0]}`,
      );
    }
  };
  const settings = {
    rawFunction: true,
    relativeTolerance: options.relativeTolerance,
    absoluteTolerance: [...options.absoluteTolerance],
    initialStepSize: FIRST_STEP,
    interpolationFormulaDegree: INTERPOLATION_DEGREE,
    // The limit is kept here, over all segments of a run; odex's own would start again with every segment.
    maxSteps: Number.MAX_SAFE_INTEGER,
  };
  const solver = withOwnPowers(() => new Solver(rhs, n, settings));
  solver.contex = (xOld, h, imit) =>
    interpolant(solver.dens.slice(0, (Math.max(imit, -1) + 5) * n), n, xOld, h, imit);
  // A last step that is rejected, shortened and then accepted early asks for the proposal of a column that has not been
  // used yet; the missing number would make the next step NaN. With this it keeps the shortened step.
  solver.hh.fill(Number.MAX_VALUE);
  const segments = solver.solutionSegments(t0, [...y0], tEnd);
  for (;;) {
    const { done, value: segment } = withOwnPowers(() => segments.next());
    if (done) return;
    if (++stats.steps > options.maxSteps)
      throw new SimulationError(
        'stepLimit',
        segment.x1,
        `${options.maxSteps} integration steps were not enough`,
      );
    yield stepOf(segment.x0, segment.x1, segment.f);
  }
}
