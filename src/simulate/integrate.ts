import { dormandPrince, INTERPOLANT_TERMS } from '../numeric/dormandPrince.ts';
import type { WritableNumbers } from '../numeric/writableNumbers.ts';
import { SimulationError } from './simulationError.ts';
import { PolynomialStep, type Step } from './step.ts';

/** A smooth initial value problem: arrays of numbers, nothing else. */
export interface OdeProblem {
  readonly size: number;
  /** Writes the derivatives into `dydt`. */
  readonly derivatives: (t: number, y: ArrayLike<number>, dydt: WritableNumbers) => void;
}

/** How accurately a problem is integrated, and how long it may take. */
export interface SolverOptions {
  readonly relativeTolerance: number;
  /** One per state, in the state's unit. */
  readonly absoluteTolerance: readonly number[];
  /** Counts of work, added to as the integration goes on; `steps` above `maxSteps` ends it. */
  readonly stats: WorkCount;
  readonly maxSteps: number;
  /** s; error control follows the ends of steps, not the interpolant between them. Left out: any length. */
  readonly longestStep?: number;
}

/** Evaluations of the right-hand side and accepted steps so far. */
export interface WorkCount {
  /** Number of evaluations of the right-hand side so far. */
  evaluations: number;
  /** Number of accepted steps so far. */
  steps: number;
}

/** Integrates a smooth problem from t0 to tEnd step by step; stop by breaking out of the loop. */
export type Integrator = (
  problem: OdeProblem,
  t0: number,
  y0: readonly number[],
  tEnd: number,
  options: SolverOptions,
) => Generator<Step, undefined>;

/** Share of the step that error control proposes, so that most proposals succeed. Source: program DOP853, as the next two. */
const CAUTION = 0.9;
/** Factor by which a step grows at most from one to the next. */
const MOST_GROWTH = 6;
/** Factor by which it shrinks at most. */
const MOST_SHRINKING = 1 / 3;
/** Share of a step by which the last one may be stretched to reach the end. */
const STRETCH = 0.01;
/** Share of the time reached below which a step no longer moves it. */
const NO_STEP = 1e-15;

/** Steps whose interpolants lie in one block of memory: many small blocks burden the collector. */
const STEPS_A_BLOCK = 16;

/** Evaluations of an attempted step (the first slope is known), of its interpolant and slope at the end. */
const ATTEMPT = 11;
/** See ATTEMPT. */
const COMPLETION = 4;

/**
 * Integrates by the Runge–Kutta method of order 8(5,3) of Dormand and Prince (`numeric/dormandPrince.ts`). Powers are eighth roots, taken
 * by square roots, so that the steps have the same bits on every engine.
 *
 * @throws SimulationError nonFiniteValue, stepLimit
 */
export function* integrate(
  problem: OdeProblem,
  t0: number,
  y0: readonly number[],
  tEnd: number,
  options: SolverOptions,
): Generator<Step, undefined> {
  const {
    stats,
    relativeTolerance,
    absoluteTolerance,
    longestStep: longest = Number.POSITIVE_INFINITY,
  } = options;
  const { size, derivatives } = problem;
  const method = dormandPrince(derivatives, y0, t0, relativeTolerance, absoluteTolerance);
  let t = t0;
  let h = firstStep(problem, t0, method.y, method.slope, options);
  stats.evaluations += 2;
  let rejected = false;
  const width = INTERPOLANT_TERMS * size;
  let block = new Float64Array(STEPS_A_BLOCK * width);
  let used = 0;
  for (;;) {
    const left = tEnd - t;
    h = Math.min(h, longest);
    const last = h * (1 + STRETCH) >= left;
    if (last) h = left;
    let error = method.attempt(t, h);
    stats.evaluations += ATTEMPT;
    if (used === STEPS_A_BLOCK) {
      block = new Float64Array(STEPS_A_BLOCK * width);
      used = 0;
    }
    const at = used * width;
    if (error <= 1) {
      method.finish(t, h);
      method.interpolant(t, h, block, at);
      stats.evaluations += COMPLETION;
      // The slopes of the interpolant are evaluated after the error is known: one of them may be no number.
      if (!areNumbers(block, at + width - size, size)) error = Number.NaN;
    }
    if (!(error <= 1)) {
      if (Number.isNaN(error) || Math.abs(h) <= NO_STEP * Math.abs(t)) {
        stats.evaluations++;
        refuseNonFinite(problem, t, method.y, method.slope);
        // A trial step that overflowed is no failure of the solution: a shorter one is tried.
        if (Math.abs(h) <= NO_STEP * Math.max(1, Math.abs(t)))
          throw new SimulationError(
            'nonFiniteValue',
            t,
            'no step is short enough for the solution to follow',
          );
        h *= MOST_SHRINKING;
        rejected = true;
        continue;
      }
      h *= Math.max(MOST_SHRINKING, CAUTION / eighthRoot(error));
      rejected = true;
      continue;
    }
    used++;
    const t1 = last ? tEnd : t + h;
    if (++stats.steps > options.maxSteps)
      throw new SimulationError('stepLimit', t1, `${options.maxSteps} integration steps were not enough`);
    yield new PolynomialStep(t, t1, t, h, size, block, at);
    if (last) return;
    method.advance();
    t = t1;
    // After a rejection the next step does not grow: the error estimate has just been wrong.
    h *= Math.min(rejected ? 1 : MOST_GROWTH, Math.max(MOST_SHRINKING, CAUTION / eighthRoot(error)));
    rejected = false;
  }
}

/** Whether numbers in a row, here the last coefficients of an interpolant, which every slope is part of, are numbers. */
function areNumbers(numbers: Float64Array, first: number, count: number): boolean {
  let sum = 0;
  for (let i = first; i < first + count; i++) sum += numbers[i]! - numbers[i]!;
  return sum === 0;
}

/** Eighth root by exact operations; of 0 a number small enough for the largest growth. */
function eighthRoot(x: number): number {
  return Math.sqrt(Math.sqrt(Math.sqrt(Math.max(x, 1e-16))));
}

/** @throws SimulationError when a derivative is not finite at this state */
function refuseNonFinite(problem: OdeProblem, t: number, y: Float64Array, slope: Float64Array): void {
  problem.derivatives(t, y, slope);
  const bad = slope.findIndex((rate) => !Number.isFinite(rate));
  if (bad < 0) return;
  throw new SimulationError(
    'nonFiniteValue',
    t,
    `state ${bad} of ${problem.size} has the derivative ${slope[bad]}`,
  );
}

/** Share of the size of state over slope that a first trial step takes. Source: as `firstStep`. */
const FIRST_SHARE = 0.01;
/** s; first trial step where state or slope are zero. */
const BLIND_STEP = 1e-6;
/** Sizes in units of the tolerance below which they count as zero. Source: as `firstStep`. */
const NOTHING = 1e-5;

/**
 * Length of the first step, s, from the size of state, slope and curvature in units of the tolerance.
 *
 * Source: Hairer, Nørsett, Wanner, Solving Ordinary Differential Equations I, II.4, "Starting step size".
 */
function firstStep(
  problem: OdeProblem,
  t: number,
  y: Float64Array,
  slope: Float64Array,
  { relativeTolerance, absoluteTolerance }: SolverOptions,
): number {
  const n = problem.size;
  const scale = Float64Array.from(
    y,
    (value, i) => absoluteTolerance[i]! + relativeTolerance * Math.abs(value),
  );
  const norm = (of: (i: number) => number): number => {
    let sum = 0;
    for (let i = 0; i < n; i++) {
      const share = of(i) / scale[i]!;
      sum += share * share;
    }
    return Math.sqrt(sum / n);
  };
  const state = norm((i) => y[i]!);
  const rate = norm((i) => slope[i]!);
  const h0 = state < NOTHING || rate < NOTHING ? BLIND_STEP : (FIRST_SHARE * state) / rate;
  const ahead = Float64Array.from(y, (value, i) => value + h0 * slope[i]!);
  const there = new Float64Array(n);
  problem.derivatives(t + h0, ahead, there);
  const bend = norm((i) => there[i]! - slope[i]!) / h0;
  const largest = Math.max(rate, bend);
  if (!(largest < Number.POSITIVE_INFINITY)) return BLIND_STEP;
  const h1 = largest <= 1e-15 ? Math.max(BLIND_STEP, h0 * 1e-3) : eighthRoot(FIRST_SHARE / largest);
  return Math.min(100 * h0, h1);
}
