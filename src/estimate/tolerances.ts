/**
 * Ratio of a machine's own value to the one on its nameplate: IEC 60034-1, table of tolerances (from memory, high
 * confidence); rated current: no tolerance there, 3 % is the rounding of two digits.
 */
export const TOLERANCE = {
  lockedRotorCurrent: [1, 1.2],
  lockedRotorTorque: [0.85, 1.25],
  breakdownTorque: [0.9, 1],
  /** Of the slip at rated output; 30 % below 1 kW. */
  slip: [0.8, 1.2],
  slipBelow1kW: [0.7, 1.3],
  current: [0.97, 1.03],
} as const satisfies Record<string, readonly [number, number]>;

/** Losses may be 15 % above what the stated efficiency leaves (10 % above 150 kW): ratio of the efficiencies. */
export function efficiencyTolerance(efficiency: number, power: number): readonly [number, number] {
  const share = power > 150e3 ? 0.1 : 0.15;
  return [1 - (share * (1 - efficiency)) / efficiency, 1];
}

/** A sixth of (1 − power factor), at least 0.02 and at most 0.07: ratio of the power factors. */
export function powerFactorTolerance(powerFactor: number): readonly [number, number] {
  const allowed = Math.min(Math.max((1 - powerFactor) / 6, 0.02), 0.07);
  return [1 - allowed / powerFactor, 1];
}

/** Largest deviation that a range allows, either way, as a share. */
export function widthOf([low, high]: readonly [number, number]): number {
  return Math.max(1 - low, high - 1);
}
