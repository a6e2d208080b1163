import type { PlanRow } from './planRow.ts';

/** What one operation of each kind takes from one contactor's contacts, as a share of all that they have. */
export interface WearPerOperation {
  /** Start, then coast. */
  readonly normal: number;
  /** Start, then plug stop. */
  readonly plug: number;
  readonly inch: number;
  /** Life over the expected one at both ends of what is not known of it: ratios `low` < 1 < `high`. */
  readonly lifeFactor: { readonly low: number; readonly high: number };
}

/** What wears the contacts of both contactors of a starter. */
export interface StarterWear {
  readonly forward: WearPerOperation;
  readonly reverse: WearPerOperation;
  /** Where the lives come from, in words. */
  readonly origin: string;
  /** What a reader must know, as sentences; may be empty. */
  readonly remarks: readonly string[];
}

/**
 * Finds the wear of a starter, its load inertia multiplied by a factor, `inertiaFactor`. Rows that are alike are asked for
 * once.
 */
export type WearOfStarter = (row: PlanRow, inertiaFactor: number) => WearOutcome;

/** The wear, or why there is none. */
export type WearOutcome = StarterWear | WearNotFound | WearImpossible;

/** Why the wear could not be found: what would be needed. */
export interface WearNotFound {
  /** Each in words, with the column that would state it. */
  readonly missing: readonly string[];
}

/** Why there is no wear to be found: what contradicts itself, or does not work. */
export interface WearImpossible {
  /** Each in words. */
  readonly reasons: readonly string[];
}

/** True where the wear was found. */
export function isWear(outcome: WearOutcome): outcome is StarterWear {
  return 'origin' in outcome;
}
