import type { AxisSpec } from '../figureSpec.ts';

/** First digits of the numbers that axes end at, in ascending order; 10 closes the decade. */
const ROUND_NUMBERS = [1, 2, 5, 10] as const;
/** How much further than what the run gives an axis reaches at least. With round ends an axis then fits answers of 1 : 2.5. */
const GENEROUS = 1.5;
/** So that 5 stays 5, whatever the last bit says. */
const ROUNDING = 1e-9;

/** The smallest of 1, 2, 5 times a power of ten that is not below a positive number; 1 for anything else. */
export function roundedUp(value: number): number {
  if (!(value > 0) || !Number.isFinite(value)) return 1;
  const power = Math.floor(Math.log10(value));
  // Powers below one are divided by, so that 0.2 comes out as 0.2.
  const scaled = (digit: number) => (power < 0 ? digit / 10 ** -power : digit * 10 ** power);
  return scaled(ROUND_NUMBERS.find((digit) => scaled(digit) >= value * (1 - ROUNDING)) ?? 10);
}

/**
 * An axis to sketch on that does not tell what is to be found out: currents, torque and angles reach equally far to both sides, and half
 * as far again as in the run, to a round number; time does so after zero. Speed and voltage reach both ways or from zero to the next round
 * number, for synchronous speed and supply voltage are given.
 */
export function sketchAxis(axis: AxisSpec): AxisSpec {
  const [low, high] = axis.domain;
  const size = Math.max(Math.abs(low), Math.abs(high));
  if (/^time\b/iu.test(axis.label))
    return { ...axis, domain: [Math.min(0, low), roundedUp(GENEROUS * high)] };
  if (/voltage/iu.test(axis.label)) return { ...axis, domain: [0, roundedUp(size)] };
  const end = roundedUp(/speed/iu.test(axis.label) ? size : GENEROUS * size);
  return { ...axis, domain: [-end, end] };
}
