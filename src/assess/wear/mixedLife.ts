/** A part of a mixed duty. */
export interface DutyPart {
  /** Share of all operations, 0 … 1. */
  readonly share: number;
  /** Operations the contacts would last if all were of this kind. */
  readonly life: number;
}

/**
 * Operations of a mixed duty by linear damage (Miner): 1/N = Σ share/life.
 *
 * @returns null where nothing wears
 */
export function mixedLife(parts: readonly DutyPart[]): number | null {
  let wear = 0;
  for (const { share, life } of parts) wear += share / life;
  return wear > 0 ? 1 / wear : null;
}
