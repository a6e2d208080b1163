import { exponential } from '../numeric/exponential.ts';
import { GAUSS_POINTS } from '../numeric/gaussPoints.ts';
import { logarithm } from '../numeric/logarithm.ts';
import { squared } from '../numeric/raised.ts';
import type { OverloadData, TripClass } from '../scenario/starterData.ts';

/**
 * The thermal overload relay: one thermal memory per phase, of the first-order form of IEC 60255-149,
 * dH/dt = ((i/(k·Ir))² − H)/τ. The relay trips when the hottest phase reaches 1. The memory is a linear filter of i², so it may
 * be fed with instantaneous currents. Not modelled: phase-loss sensitivity, ambient compensation, slower cooling after a trip.
 */
export interface OverloadConstants {
  /** Least current that trips in the long run, multiples of the setting. */
  readonly k: number;
  /** Time constant of heating and of cooling, s. */
  readonly tau: number;
}

/** Heat at which the relay trips; the heat is counted in this unit. */
export const TRIP_LEVEL = 1;

/**
 * Heat below which a tripped relay can be reset. Assumed; common practice, no source. It lies above the heat of long running
 * at the setting, 1/k² = 0.83.
 */
export const RESET_LEVEL = 0.9;

/**
 * k, multiples of the setting: between 1.05 (must not trip) and 1.2 (must trip) of IEC 60947-4-1 (both from memory, high
 * confidence). Where between them is assumed.
 */
const LEAST_TRIPPING_MULTIPLE = 1.1;

/**
 * The point of the trip curve, from cold, that fixes τ: multiple of the setting, s. Class N trips after N s at 6 times the
 * setting, the limit of NEMA and UL, and then lies within the band of IEC 60947-4-1 at 7.2 times. 10A is a class of
 * IEC alone: 2 to 10 s at 7.2 times, 5 s assumed.
 */
const TRIP_POINTS: Readonly<Record<TripClass, { readonly multiple: number; readonly time: number }>> = {
  '5': { multiple: 6, time: 5 },
  '10A': { multiple: 7.2, time: 5 },
  '10': { multiple: 6, time: 10 },
  '20': { multiple: 6, time: 20 },
  '30': { multiple: 6, time: 30 },
};

/** Constants of a trip class. */
export function overloadConstants(tripClass: TripClass): OverloadConstants {
  const k = LEAST_TRIPPING_MULTIPLE;
  const { multiple, time } = TRIP_POINTS[tripClass];
  return { k, tau: time / tripTimeCold(multiple, { k, tau: 1 }) };
}

/** Heat of every phase at t = 0: none when cold, the steady heat of the setting, 1/k², when warm. */
export function initialHeat(overload: OverloadData): number {
  return overload.start === 'cold' ? 0 : 1 / squared(overloadConstants(overload.tripClass).k);
}

/**
 * What an interval's current leaves in the memory at its end: ∫ e^(−(t₁−s)/τ)·i(s)² ds over the interval, A²·s, from i² at its
 * five Gauss–Legendre points (`GAUSS_POINTS`). Over a quarter of a supply period the error is below 1e-6 of the value.
 *
 * @param duration of the interval, s
 * @param squares i² at the points in their order, A²
 * @param tau time constant, s; far longer than the interval
 */
export function weightedSquares(duration: number, squares: ArrayLike<number>, tau: number): number {
  let sum = 0;
  for (let j = 0; j < GAUSS_POINTS.length; j++) {
    const { x, w } = GAUSS_POINTS[j]!;
    sum += w * exponential(-((1 - x) * duration) / tau) * squares[j]!;
  }
  return sum * duration;
}

/**
 * One phase's heat at the end of an interval: H(t₁) = H(t₀)·e^(−Δ/τ) + W/(τ·(k·Ir)²).
 *
 * @param heat at the start
 * @param duration Δ, s
 * @param weighted W of `weightedSquares`, A²·s; 0 without current, and then Δ may be as long as it likes
 * @param setting Ir, A r.m.s.
 */
export function heatAfter(
  heat: number,
  duration: number,
  weighted: number,
  constants: OverloadConstants,
  setting: number,
): number {
  const { k, tau } = constants;
  return heat * exponential(-duration / tau) + weighted / (tau * squared(k * setting));
}

/** True when the relay, of which this is the hottest phase's heat, has cooled enough to be reset. */
export function canReset(heat: number): boolean {
  return heat < RESET_LEVEL;
}

/**
 * Time to trip from cold at a constant current, t = τ·ln(I²/(I² − k²)), s (IEC 60255-149).
 * @param multiple I, multiples of the setting, r.m.s.
 * @returns Infinity at or below k
 */
export function tripTimeCold(multiple: number, constants: OverloadConstants): number {
  return tripTimeHot(multiple, 0, constants);
}

/**
 * Time to trip at a constant current after long running at a smaller one, t = τ·ln((I² − Ip²)/(I² − k²)), s (IEC 60255-149).
 * @param multiple I, multiples of the setting, r.m.s.
 * @param preload Ip, multiples of the setting, r.m.s.
 * @returns 0 where the preload alone has tripped it; Infinity where I is at or below k
 */
export function tripTimeHot(multiple: number, preload: number, constants: OverloadConstants): number {
  const { k, tau } = constants;
  if (preload >= k) return 0;
  if (multiple <= k) return Number.POSITIVE_INFINITY;
  return tau * logarithm((squared(multiple) - squared(preload)) / (squared(multiple) - squared(k)));
}
