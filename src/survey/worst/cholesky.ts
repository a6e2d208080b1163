/**
 * Lower triangle L of a symmetric matrix, L·Lᵀ.
 *
 * @param matrix rows; its lower triangle is read
 * @returns null where the matrix is not positive definite
 */
export function cholesky(matrix: readonly (readonly number[])[]): number[][] | null {
  const lower = matrix.map((row) => row.map(() => 0));
  for (let i = 0; i < matrix.length; i++) {
    for (let j = 0; j <= i; j++) {
      let rest = matrix[i]![j]!;
      for (let k = 0; k < j; k++) rest -= lower[i]![k]! * lower[j]![k]!;
      if (i > j) lower[i]![j] = rest / lower[j]![j]!;
      else if (rest > 0) lower[i]![i] = Math.sqrt(rest);
      else return null;
    }
  }
  return lower;
}

/** L·x of a lower triangle. */
export function times(lower: readonly (readonly number[])[], x: readonly number[]): number[] {
  return lower.map((row, i) => {
    let sum = 0;
    for (let k = 0; k <= i; k++) sum += row[k]! * x[k]!;
    return sum;
  });
}

/** The x of L·x = b for a lower triangle. */
export function solvedForward(lower: readonly (readonly number[])[], b: readonly number[]): number[] {
  const x: number[] = [];
  lower.forEach((row, i) => {
    let rest = b[i]!;
    for (let k = 0; k < i; k++) rest -= row[k]! * x[k]!;
    x.push(rest / row[i]!);
  });
  return x;
}

/** The x of Lᵀ·x = b for a lower triangle. */
export function solvedBackward(lower: readonly (readonly number[])[], b: readonly number[]): number[] {
  const x = [...b];
  for (let i = lower.length - 1; i >= 0; i--) {
    for (let k = i + 1; k < lower.length; k++) x[i]! -= lower[k]![i]! * x[k]!;
    x[i]! /= lower[i]![i]!;
  }
  return x;
}
