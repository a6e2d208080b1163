/** The winding equations seen from current loops, each entering one winding and leaving by another. */
export interface LoopEquations {
  /** Forgets all loops. */
  clear(): void;
  /** Adds the loop that enters winding `plus` and leaves by winding `minus`. */
  add(plus: number, minus: number): void;
  /**
   * Solves L_loop·x = drive around each loop and writes the winding values that x makes up into `out`
   * (first as many entries as there are windings).
   */
  solve(drive: Float64Array, out: Float64Array): void;
}

/**
 * @param L full symmetric inductance matrix, row-major, read anew at every solution
 * @param windings its order
 */
export function loopEquations(L: Float64Array, windings: number): LoopEquations {
  const plusOf = new Int32Array(windings);
  const minusOf = new Int32Array(windings);
  const A = new Float64Array(windings * windings);
  const x = new Float64Array(windings);
  let loops = 0;

  /** Inductances between loops, lower triangle. */
  function reduce(): void {
    for (let a = 0; a < loops; a++) {
      const plus = plusOf[a]! * windings;
      const minus = minusOf[a]! * windings;
      for (let b = 0; b <= a; b++) {
        const p = plusOf[b]!;
        const m = minusOf[b]!;
        A[a * loops + b] = L[plus + p]! - L[plus + m]! - L[minus + p]! + L[minus + m]!;
      }
    }
  }

  /** Symmetric elimination in place (A is positive definite: no pivoting; columns stay unscaled), then x backwards. */
  function factorAndSolve(): void {
    for (let k = 0; k < loops; k++) {
      const pivot = A[k * loops + k]!;
      for (let a = k + 1; a < loops; a++) {
        const factor = A[a * loops + k]! / pivot;
        for (let b = k + 1; b <= a; b++) {
          A[a * loops + b] = A[a * loops + b]! - factor * A[b * loops + k]!;
        }
        x[a] = x[a]! - factor * x[k]!;
      }
    }
    for (let k = loops - 1; k >= 0; k--) {
      let sum = x[k]!;
      for (let a = k + 1; a < loops; a++) sum -= A[a * loops + k]! * x[a]!;
      x[k] = sum / A[k * loops + k]!;
    }
  }

  return {
    clear() {
      loops = 0;
    },
    add(plus, minus) {
      plusOf[loops] = plus;
      minusOf[loops] = minus;
      loops++;
    },
    solve(drive, out) {
      for (let a = 0; a < loops; a++) x[a] = drive[plusOf[a]!]! - drive[minusOf[a]!]!;
      reduce();
      factorAndSolve();
      for (let k = 0; k < windings; k++) out[k] = 0;
      for (let a = 0; a < loops; a++) {
        const plus = plusOf[a]!;
        const minus = minusOf[a]!;
        out[plus] = out[plus]! + x[a]!;
        out[minus] = out[minus]! - x[a]!;
      }
    },
  };
}
