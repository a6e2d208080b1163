/** Where an integrand on [0, 1] is read, and with which weight. */
export interface GaussPoint {
  /** Share of the interval, from its start. */
  readonly x: number;
  readonly w: number;
}

/**
 * Gauss–Legendre points and weights on [0, 1], five of them: exact to degree 9.
 * Source: Abramowitz & Stegun, Handbook of Mathematical Functions, table 25.4, mapped from [−1, 1] (from memory;
 * a test integrates every power up to 9).
 */
export const GAUSS_POINTS: readonly GaussPoint[] = (() => {
  const inner = Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3;
  const outer = Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3;
  const wInner = (322 + 13 * Math.sqrt(70)) / 1800;
  const wOuter = (322 - 13 * Math.sqrt(70)) / 1800;
  return [
    { x: (1 - outer) / 2, w: wOuter },
    { x: (1 - inner) / 2, w: wInner },
    { x: 1 / 2, w: 64 / 225 },
    { x: (1 + inner) / 2, w: wInner },
    { x: (1 + outer) / 2, w: wOuter },
  ];
})();
