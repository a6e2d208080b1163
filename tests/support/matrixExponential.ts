import { Matrix } from 'ml-matrix';

/** Norm below which the series below converges to the last bit in `TERMS` terms. */
const SCALED_NORM = 0.5;
/** 0.5^18/18! is below 1e-21. */
const TERMS = 18;

/**
 * e^{A} by scaling and squaring of the Taylor series: for the few small matrices of exact solutions.
 * @param a square
 */
export function matrixExponential(a: Matrix): Matrix {
  const norm = Math.max(
    ...Array.from({ length: a.rows }, (_, i) => a.getRow(i).reduce((s, x) => s + Math.abs(x), 0)),
  );
  const squarings = Math.max(0, Math.ceil(Math.log2(norm / SCALED_NORM)));
  const scaled = Matrix.mul(a, 2 ** -squarings);
  let term = Matrix.eye(a.rows);
  let sum = Matrix.eye(a.rows);
  for (let k = 1; k <= TERMS; k++) {
    term = term.mmul(scaled).div(k);
    sum = Matrix.add(sum, term);
  }
  for (let i = 0; i < squarings; i++) sum = sum.mmul(sum);
  return sum;
}

/** Solution at time t of dx/dt = A·x + b from x0, with A regular. */
export function linearSolution(a: Matrix, b: Matrix, x0: Matrix, t: number, inverse: Matrix): Matrix {
  const steady = inverse.mmul(b).mul(-1);
  const growth = matrixExponential(Matrix.mul(a, t));
  return Matrix.add(steady, growth.mmul(Matrix.sub(x0, steady)));
}
