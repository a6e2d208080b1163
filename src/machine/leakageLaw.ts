import { squared } from '../numeric/raised.ts';
import type { LeakageSaturation } from '../scenario/scenario.ts';
import type { FluxBranch } from './fluxBranch.ts';

/** A saturable leakage path with what stands in series with it. */
export interface LeakageLaw extends FluxBranch {
  /** Flux linkage of path and series inductance at a current i ≥ 0 A, Wb. */
  flux(current: number): number;
}

/** Newton steps after which rounding decides; from the bounds below about five are needed. */
const MOST_STEPS = 40;

/**
 * Leakage path λ(i) = L·[r·i + (1 − r)·i/√(1 + (i/I)²)] in series with a linear inductance Ls.
 *
 * In x = i/I it is λ = a·x + b·x/√(1 + x²): inductance L + Ls at small current, r·L + Ls at large. λ(i) bends
 * downwards everywhere, so that Newton's steps for i(λ) rise to the root from any point below it and need no guard; both
 * λ/(a + b) and (λ − b)/a are below it. The stored energy ∫ i dλ has the closed form
 * ½·(r·L + Ls)·i² + (1 − r)·L·I²·(1 − 1/√(1 + x²)).
 *
 * @param inductance L, H
 * @param series Ls, H
 */
export function leakageLaw(inductance: number, saturation: LeakageSaturation, series = 0): LeakageLaw {
  const knee = saturation.current;
  const linear = saturation.remaining * inductance + series;
  const saturable = (1 - saturation.remaining) * inductance;
  const a = linear * knee;
  const b = saturable * knee;

  function current(flux: number): number {
    let x = Math.max(flux / (a + b), (flux - b) / a);
    for (let n = 0; n < MOST_STEPS; n++) {
      const square = 1 + x * x;
      const root = 1 / Math.sqrt(square);
      const step = (flux - x * (a + b * root)) / (a + (b * root) / square);
      const next = x + step;
      // Rising steps end where rounding makes them fall or stand still.
      if (!(next > x)) return knee * next;
      x = next;
    }
    return knee * x;
  }

  return {
    slopeAtZero: 1 / (linear + saturable),
    current,
    slope: (_flux, current) => {
      const square = 1 + squared(current / knee);
      return 1 / (linear + saturable / (square * Math.sqrt(square)));
    },
    energy: (_flux, current) => {
      const square = squared(current / knee);
      const root = Math.sqrt(1 + square);
      // 1 − 1/√(1 + x²) = x²/(√(1 + x²)·(√(1 + x²) + 1)), without the cancellation at small x
      return 0.5 * linear * current * current + (saturable * knee * knee * square) / (root * (root + 1));
    },
    flux: (current) => current * (linear + saturable / Math.sqrt(1 + squared(current / knee))),
  };
}
