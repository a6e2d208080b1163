import { Matrix, QrDecomposition } from 'ml-matrix';
import { euclideanNorm } from './hypotenuse.ts';
import { raised, squared } from './raised.ts';

/** What is to be made small: the sum of squares of the residuals. */
export interface LeastSquaresProblem {
  /** Residuals at a point; at least as many as unknowns help, fewer are allowed. Not a number: the point is not allowed. */
  readonly residuals: (x: readonly number[]) => readonly number[];
  /** Rows: residuals, columns: unknowns. Left out: central differences. */
  readonly jacobian?: (x: readonly number[]) => readonly (readonly number[])[];
}

/** When the search ends. */
export interface LeastSquaresOptions {
  /** Trial steps, accepted or not. */
  readonly maxIterations?: number;
  /** Relative decrease of the cost, foreseen and had, below which the search ends. */
  readonly costTolerance?: number;
  /** Length of the scaled step against that of the scaled unknowns below which the search ends. */
  readonly stepTolerance?: number;
}

/**
 * cost: the cost does not fall any more; step: the point does not move any more; gradient: the residuals are zero or
 * stand at right angles to everything the unknowns can do; iterationLimit: none of these.
 */
export type LeastSquaresStatus = 'cost' | 'step' | 'gradient' | 'iterationLimit';

/** Best point found. */
export interface LeastSquaresResult {
  readonly x: readonly number[];
  readonly residuals: readonly number[];
  /** Half the sum of squares. */
  readonly cost: number;
  /** At x; its columns say how well each unknown is determined (covariance ∝ (JᵀJ)⁻¹). */
  readonly jacobian: readonly (readonly number[])[];
  readonly status: LeastSquaresStatus;
  /** Trial steps. */
  readonly iterations: number;
}

const DEFAULTS = { maxIterations: 200, costTolerance: 1e-12, stepTolerance: 1e-10 } as const;
/** Damping at the start against the largest scaled diagonal of JᵀJ, which is 1 (Nielsen's τ). */
const FIRST_DAMPING = 1e-3;
/** Largest component of the gradient in units of scaled unknowns, against the size of the residuals. */
const GRADIENT_TOLERANCE = 1e-14;
/** Cube root of the rounding error: best step of a central difference. */
const DIFFERENCE_STEP = 6e-6;

/**
 * Nonlinear least squares by the method of Levenberg and Marquardt. Each step solves the damped linear problem by
 * Householder reflections of [J; √λ·D] rather than of JᵀJ, D the largest column norms so far (Moré 1978); λ follows the
 * gain ratio (Nielsen 1999; both from memory). A step that raises the cost, or leaves the domain, is never taken.
 *
 * @param start a point at which every residual is a number
 * @returns the best point, in whatever status; the caller judges the cost
 * @throws RangeError when the residuals at the start are not numbers
 */
export function leastSquares(
  problem: LeastSquaresProblem,
  start: readonly number[],
  options: LeastSquaresOptions = {},
): LeastSquaresResult {
  const { maxIterations, costTolerance, stepTolerance } = { ...DEFAULTS, ...options };
  const jacobianAt = problem.jacobian ?? ((x: readonly number[]) => centralDifferences(problem.residuals, x));
  let x = start;
  let residuals = problem.residuals(x);
  let cost = halfSquares(residuals);
  if (!Number.isFinite(cost))
    throw new RangeError('least squares: the residuals at the start are not numbers');
  let jacobian = jacobianAt(x);
  const scale: number[] = x.map(() => 0);
  growScale(scale, jacobian);
  let damping = FIRST_DAMPING;
  let raise = 2;
  const result = (status: LeastSquaresStatus, iterations: number): LeastSquaresResult => {
    return { x, residuals, cost, jacobian, status, iterations };
  };
  for (let iteration = 1; iteration <= maxIterations; iteration++) {
    const gradient = transposeTimes(jacobian, residuals);
    const size = Math.sqrt(2 * cost);
    if (gradient.every((g, i) => Math.abs(g) <= GRADIENT_TOLERANCE * scale[i]! * size))
      return result('gradient', iteration - 1);
    const step = dampedStep(jacobian, residuals, scale, damping);
    const stepSize = scaledNorm(step, scale);
    if (stepSize <= stepTolerance * (scaledNorm(x, scale) + stepTolerance)) return result('step', iteration);
    const trial = x.map((value, i) => value + step[i]!);
    const trialResiduals = problem.residuals(trial);
    const trialCost = halfSquares(trialResiduals);
    // Decrease of the linear model: ½·stepᵀ(λD²·step − gradient), free of cancellation.
    const foreseen =
      0.5 * step.reduce((sum, s, i) => sum + s * (damping * squared(scale[i]!) * s - gradient[i]!), 0);
    const decrease = cost - trialCost;
    const gain = Number.isFinite(trialCost) ? decrease / foreseen : Number.NEGATIVE_INFINITY;
    if (gain > 0) {
      const small = decrease <= costTolerance * cost && foreseen <= costTolerance * cost;
      x = trial;
      residuals = trialResiduals;
      cost = trialCost;
      jacobian = jacobianAt(x);
      growScale(scale, jacobian);
      damping *= Math.max(1 / 3, 1 - raised(2 * gain - 1, 3));
      raise = 2;
      if (small) return result('cost', iteration);
    } else {
      if (foreseen <= costTolerance * cost) return result('cost', iteration);
      damping *= raise;
      raise *= 2;
    }
  }
  return result('iterationLimit', maxIterations);
}

function dampedStep(
  jacobian: readonly (readonly number[])[],
  residuals: readonly number[],
  scale: readonly number[],
  damping: number,
): number[] {
  const n = scale.length;
  const m = residuals.length;
  const matrix = Matrix.zeros(m + n, n);
  const right = Matrix.zeros(m + n, 1);
  for (let row = 0; row < m; row++) {
    for (let column = 0; column < n; column++)
      matrix.set(row, column, jacobian[row]![column]! / scale[column]!);
    right.set(row, 0, -residuals[row]!);
  }
  for (let i = 0; i < n; i++) matrix.set(m + i, i, Math.sqrt(damping));
  const solution = new QrDecomposition(matrix).solve(right);
  return scale.map((s, i) => solution.get(i, 0) / s);
}

/** An unknown that moves nothing keeps the scale 1, so that its damped step is zero and not undefined. */
function growScale(scale: number[], jacobian: readonly (readonly number[])[]): void {
  for (let i = 0; i < scale.length; i++) {
    const norm = euclideanNorm(jacobian.map((row) => row[i]!));
    scale[i] = Math.max(scale[i]!, norm) || 1;
  }
}

function centralDifferences(
  residuals: LeastSquaresProblem['residuals'],
  x: readonly number[],
): readonly (readonly number[])[] {
  const columns = x.map((value, i) => {
    const h = DIFFERENCE_STEP * Math.max(Math.abs(value), 1);
    const up = residuals(x.with(i, value + h));
    const down = residuals(x.with(i, value - h));
    return up.map((r, row) => (r - down[row]!) / (2 * h));
  });
  return columns[0]!.map((_, row) => columns.map((column) => column[row]!));
}

function halfSquares(values: readonly number[]): number {
  return 0.5 * values.reduce((sum, value) => sum + value * value, 0);
}

function transposeTimes(matrix: readonly (readonly number[])[], vector: readonly number[]): number[] {
  return matrix[0]!.map((_, i) => matrix.reduce((sum, row, j) => sum + row[i]! * vector[j]!, 0));
}

function scaledNorm(vector: readonly number[], scale: readonly number[]): number {
  return euclideanNorm(vector.map((value, i) => value * scale[i]!));
}
