import type { MachineData } from '../scenario/scenario.ts';
import type { FluxBranch } from './fluxBranch.ts';
import { type LeakageLaw, leakageLaw } from './leakageLaw.ts';
import { magnetisingCurve } from './magnetisingCurve.ts';

/** Saturable branches of a circuit; null: that branch is linear. */
export interface Saturation {
  readonly main: FluxBranch | null;
  /** Stator leakage in series with the inductance ahead of the machine. */
  readonly stator: LeakageLaw | null;
  /** One entry per cage. */
  readonly cages: readonly (LeakageLaw | null)[];
}

/**
 * The saturable branches of a machine, or null when every branch is linear.
 *
 * @param impedanceScale 3 for the windings of a delta machine in star, otherwise 1: inductances scale with it, fluxes with
 * its root, currents with the inverse of its root
 * @param seriesL linear inductance ahead of the stator, H
 */
export function saturationOf(
  machine: MachineData,
  impedanceScale: number,
  seriesL: number,
): Saturation | null {
  const { mainSaturation, leakageSaturation } = machine;
  const root = Math.sqrt(impedanceScale);
  const law = (inductance: number, saturation: LeakageSaturationOrNull, series: number): LeakageLaw | null =>
    saturation &&
    leakageLaw(
      impedanceScale * inductance,
      { current: saturation.current / root, remaining: saturation.remaining },
      series,
    );
  const main = mainSaturation
    ? magnetisingCurve(
        mainSaturation.map(({ current, flux }) => ({ current: current / root, flux: flux * root })),
      )
    : null;
  const stator = law(machine.Lls, leakageSaturation?.stator ?? null, seriesL);
  const cages = machine.cages.map((cage, j) => law(cage.Llr, leakageSaturation?.cages[j] ?? null, 0));
  return main || stator || cages.some((cage) => cage !== null) ? { main, stator, cages } : null;
}

type LeakageSaturationOrNull = NonNullable<MachineData['leakageSaturation']>['stator'];
