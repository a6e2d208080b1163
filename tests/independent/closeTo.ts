import { expect } from 'vitest';

/** Expects |actual − expected| ≤ relative·|expected| + absolute. */
export function expectClose(
  actual: number | null | undefined,
  expected: number,
  relative: number,
  absolute = 0,
  label = '',
): void {
  const error = Math.abs((actual ?? Number.NaN) - expected);
  const allowed = relative * Math.abs(expected) + absolute;
  expect(error, `${label} expected ${expected}, got ${actual}, allowed error ${allowed}`).toBeLessThanOrEqual(
    allowed,
  );
}
