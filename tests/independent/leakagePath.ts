import type { LeakageShape } from './scenarioShape.ts';

/** A leakage path read from the side of the current: λ = secant·i, magnitudes of space vectors. */
export interface LeakagePath {
  readonly initial: number;
  /** False: the inductance is `initial` at every current. */
  readonly bends: boolean;
  /** λ/i at the square of the current, H. */
  secant(square: number): number;
  /** dλ/di at the square of the current, H. */
  slope(square: number): number;
  /** ∫ i dλ at the square of the current, A·Wb. */
  stored(square: number): number;
}

/** @param L inductance at small current, H */
export function leakagePath(L: number, law: LeakageShape | null): LeakagePath {
  if (law === null) {
    return {
      initial: L,
      bends: false,
      secant: () => L,
      slope: () => L,
      stored: (square) => 0.5 * L * square,
    };
  }
  const knee = law.current * law.current;
  const lasting = L * law.remaining;
  const passing = L - lasting;
  const stretch = (square: number) => Math.sqrt(1 + square / knee);
  return {
    initial: L,
    bends: true,
    secant: (square) => lasting + passing / stretch(square),
    slope: (square) => lasting + passing / stretch(square) ** 3,
    // ∫ i dλ = i·λ − ∫ λ di, term by term.
    stored: (square) =>
      0.5 * lasting * square + passing * (square / stretch(square) - knee * (stretch(square) - 1)),
  };
}
