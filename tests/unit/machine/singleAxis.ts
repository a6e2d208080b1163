import { inverse, Matrix } from 'ml-matrix';
import type { LeakageSaturation } from '../../../src/scenario/scenario.ts';
import { leakageFlux, leakageIncrement, mainFlux, mainIncrement, rungeKutta } from './saturableMachine.ts';

/** One winding of a circuit on a single axis; `voltage` drives it, null: short-circuited. */
export interface AxisWinding {
  readonly R: number;
  readonly L: number;
  readonly saturation: LeakageSaturation | null;
  readonly voltage: ((t: number) => number) | null;
}

/** Main flux path: its linear inductance, or null for the curve of these tests. */
export type AxisMain = { readonly Lm: number } | null;

/**
 * Windings on one axis with one main path, the rotor at rest, integrated in currents:
 * [diag(λk'(ik)) + ψm'(im)·1]·di/dt = u − R·i. Written without fluxes as states and without the simulator's curves.
 *
 * @param i0 currents at t = 0, A
 * @returns currents at the end, A
 */
export function axisCurrents(
  windings: readonly AxisWinding[],
  main: AxisMain,
  i0: readonly number[],
  duration: number,
  steps: number,
): number[] {
  return rungeKutta(
    (t, i) => {
      const total = i.reduce((sum, x) => sum + x, 0);
      const common = main ? main.Lm : mainIncrement(total);
      const inductance = new Matrix(
        windings.map((w, j) =>
          windings.map((_, k) => common + (j === k ? leakageIncrement(w.L, w.saturation, i[j]!) : 0)),
        ),
      );
      const drive = Matrix.columnVector(windings.map((w, j) => (w.voltage?.(t) ?? 0) - w.R * i[j]!));
      return inverse(inductance).mmul(drive).to1DArray();
    },
    i0,
    0,
    duration,
    steps,
  );
}

/** Flux linkage of each winding at given currents, Wb. */
export function axisFluxes(windings: readonly AxisWinding[], main: AxisMain, i: readonly number[]): number[] {
  const total = i.reduce((sum, x) => sum + x, 0);
  const common = main ? main.Lm * total : mainFlux(total);
  return windings.map((w, k) => common + leakageFlux(w.L, w.saturation, i[k]!));
}
