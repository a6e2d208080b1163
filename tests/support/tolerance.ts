/** How far a number may be off; the allowed error is the larger of the two parts. */
export interface Tolerance {
  /** Fraction of the expected magnitude. */
  readonly relative?: number;
  /** In the unit of the number. */
  readonly absolute?: number;
}

/** Error of `actual` in units of what is allowed: up to 1 is within tolerance. Not a number counts as infinite. */
export function errorInTolerances(actual: number, expected: number, tolerance: Tolerance): number {
  const allowed = Math.max((tolerance.relative ?? 0) * Math.abs(expected), tolerance.absolute ?? 0);
  const error = Math.abs(actual - expected);
  if (error === 0) return 0;
  const inUnits = error / allowed;
  return Number.isNaN(inUnits) ? Number.POSITIVE_INFINITY : inUnits;
}

/**
 * Demands that a number is within tolerance of what is expected.
 * @param what names the number in the message
 * @throws Error that states both numbers and the error in units of the tolerance; a missing number is an error
 */
export function expectWithin(
  actual: number | null | undefined,
  expected: number,
  tolerance: Tolerance,
  what: string,
): void {
  if (actual === null || actual === undefined)
    throw new Error(`${what}: expected ${expected}, got ${actual}`);
  const error = errorInTolerances(actual, expected, tolerance);
  if (error <= 1) return;
  throw new Error(
    `${what}: expected ${expected}, got ${actual}; the error is ${error.toPrecision(3)} times the tolerance ` +
      `(relative ${tolerance.relative ?? 0}, absolute ${tolerance.absolute ?? 0})`,
  );
}

/** The same for lists of equal length. */
export function expectAllWithin(
  actual: ArrayLike<number>,
  expected: ArrayLike<number>,
  tolerance: Tolerance,
  what: string,
): void {
  if (actual.length !== expected.length)
    throw new Error(`${what}: expected ${expected.length} numbers, got ${actual.length}`);
  for (let i = 0; i < expected.length; i++) expectWithin(actual[i], expected[i]!, tolerance, `${what}[${i}]`);
}
