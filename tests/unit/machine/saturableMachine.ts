import type { ElectricalModel } from '../../../src/machine/electricalModel.ts';
import type { LeakageSaturation, MachineData } from '../../../src/scenario/scenario.ts';
import { DOUBLE_CAGE } from '../../support/textbookMachines.ts';

/** The supply all of these tests share: 400 V, 50 Hz. */
export const SUPPLY = DOUBLE_CAGE.supply;
export const OMEGA = 2 * Math.PI * SUPPLY.frequency;
/** Rated flux of that supply, Wb crest. */
export const RATED_FLUX = (SUPPLY.lineVoltage * Math.sqrt(2 / 3)) / OMEGA;

/** Knee and end of the magnetising curve, Wb, and its slopes before the one and at the other, 1/H. */
const KNEE = 0.8 * RATED_FLUX;
const END = 1.25 * RATED_FLUX;
const SLOPE = 1 / DOUBLE_CAGE.machine.Lm;
const END_SLOPE = 7 * SLOPE;
const CURVATURE = (END_SLOPE - SLOPE) / (2 * (END - KNEE));

/**
 * Magnetising current of the curve below, written out: straight to the knee, a parabola to the end, straight beyond. A
 * curve through two points has these pieces by its definition: straight, then a last piece whose slope changes evenly.
 */
export function magnetisingCurrent(flux: number): number {
  if (flux <= KNEE) return SLOPE * flux;
  if (flux <= END) return SLOPE * flux + CURVATURE * (flux - KNEE) ** 2;
  return magnetisingCurrent(END) + END_SLOPE * (flux - END);
}

/** di/dψ of that curve, 1/H. */
export function magnetisingSlope(flux: number): number {
  return SLOPE + 2 * CURVATURE * Math.min(Math.max(flux - KNEE, 0), END - KNEE);
}

/** Its inverse in closed form, Wb; odd. */
export function mainFlux(current: number): number {
  const i = Math.abs(current);
  const sign = Math.sign(current);
  const knee = SLOPE * KNEE;
  if (i <= knee) return current / SLOPE;
  const end = magnetisingCurrent(END);
  if (i >= end) return sign * (END + (i - end) / END_SLOPE);
  const root = Math.sqrt(SLOPE * SLOPE + 4 * CURVATURE * (i - knee));
  return sign * (KNEE + (root - SLOPE) / (2 * CURVATURE));
}

/** dψ/di at a current, H. */
export function mainIncrement(current: number): number {
  return 1 / magnetisingSlope(Math.abs(mainFlux(current)));
}

/** The curve as a scenario has it. */
export const MAIN_SATURATION = [KNEE, END].map((flux) => ({ flux, current: magnetisingCurrent(flux) }));

/** Leakage flux by the definition of the law, Wb. */
export function leakageFlux(L: number, saturation: LeakageSaturation | null, i: number): number {
  if (saturation === null) return L * i;
  const { current, remaining: r } = saturation;
  return L * (r * i + ((1 - r) * i) / Math.sqrt(1 + (i / current) ** 2));
}

/** dλ/di of that law, H. */
export function leakageIncrement(L: number, saturation: LeakageSaturation | null, i: number): number {
  if (saturation === null) return L;
  const { current, remaining: r } = saturation;
  return L * (r + (1 - r) * (1 + (i / current) ** 2) ** -1.5);
}

/** Every leakage path of the two-cage machine saturates around its rated current. */
export const LEAKAGE_SATURATION = {
  stator: { current: 90, remaining: 0.55 },
  cages: [
    { current: 70, remaining: 0.4 },
    { current: 110, remaining: 0.65 },
  ],
} as const;

/** Iron loss of about two per cent of the machine's rating. */
export const CORE = { R: 300, L: 300 / OMEGA / 15 } as const;

/** The two-cage machine with elements switched on one by one. */
export const LINEAR: MachineData = DOUBLE_CAGE.machine;
export const WITH_MAIN: MachineData = { ...LINEAR, mainSaturation: MAIN_SATURATION };
export const WITH_LEAKAGE: MachineData = { ...LINEAR, leakageSaturation: LEAKAGE_SATURATION };
export const WITH_CORE: MachineData = { ...LINEAR, core: CORE };
export const WITH_ALL: MachineData = {
  ...LINEAR,
  mainSaturation: MAIN_SATURATION,
  leakageSaturation: LEAKAGE_SATURATION,
  core: CORE,
};

/** The same with its first cage alone. */
export function oneCage(machine: MachineData): MachineData {
  const { leakageSaturation } = machine;
  return {
    ...machine,
    cages: machine.cages.slice(0, 1),
    ...(leakageSaturation && {
      leakageSaturation: { ...leakageSaturation, cages: leakageSaturation.cages.slice(0, 1) },
    }),
  };
}

/** Classical Runge–Kutta steps of equal size. */
export function rungeKutta(
  rhs: (t: number, y: readonly number[]) => number[],
  y0: readonly number[],
  t0: number,
  duration: number,
  steps: number,
): number[] {
  const h = duration / steps;
  let y = [...y0];
  const plus = (k: readonly number[], by: number) => y.map((value, n) => value + by * k[n]!);
  for (let n = 0; n < steps; n++) {
    const t = t0 + n * h;
    const k1 = rhs(t, y);
    const k2 = rhs(t + h / 2, plus(k1, h / 2));
    const k3 = rhs(t + h / 2, plus(k2, h / 2));
    const k4 = rhs(t + h, plus(k3, h));
    y = y.map((value, i) => value + (h / 6) * (k1[i]! + 2 * k2[i]! + 2 * k3[i]! + k4[i]!));
  }
  return y;
}

/** A model's right-hand side at constant speed. */
export function rhsOf(model: ElectricalModel, omegaM: number): (t: number, y: readonly number[]) => number[] {
  return (t, y) => {
    const dydt: number[] = [];
    model.derivatives(t, y, omegaM, dydt);
    return dydt.slice(0, model.size);
  };
}

/** Numbers between −1 and 1 that are the same in every run. */
export function repeatableNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    // 32-bit linear congruential generator, multiplier and increment of Numerical Recipes (from memory)
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 31 - 1;
  };
}
