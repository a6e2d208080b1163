/**
 * How the losses beside those of the rotor cages are taken to divide, at rated output: common practice, no source. The stray
 * load loss goes with the square of the current and counts with the stator winding.
 */
export const LOSS_SHARES = { stator: 0.66, iron: 0.22, mechanical: 0.12 } as const;

/** Losses at rated output, multiples of rated power. */
export interface Losses {
  readonly stator: number;
  readonly iron: number;
  readonly mechanical: number;
}

/** Largest share of the rotor cages in all losses that is assumed where slip or efficiency is free to choose. */
export const MOST_ROTOR_SHARE = 0.6;

/** Share below which what the slip leaves to the other losses is taken for rounding of speed and efficiency. */
const LEAST_OTHER_SHARE = 0.15;

/** Loss in the rotor cages at rated output, multiples of rated power, mechanical loss left out. */
export function rotorLoss(slip: number): number {
  return slip / (1 - slip);
}

/**
 * Divides the losses at rated output: the slip fixes those of the rotor, the rest divides by the usual shares.
 *
 * @param efficiency at rated output
 * @returns multiples of rated power
 */
export function divideLosses(efficiency: number, slip: number): Losses {
  const all = 1 / efficiency - 1;
  const rest = Math.max(all - rotorLoss(slip), LEAST_OTHER_SHARE * all);
  return {
    stator: LOSS_SHARES.stator * rest,
    iron: LOSS_SHARES.iron * rest,
    mechanical: LOSS_SHARES.mechanical * rest,
  };
}
