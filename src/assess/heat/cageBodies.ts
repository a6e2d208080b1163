import type { MachineData, ThermalData } from '../../scenario/scenario.ts';

/** How the heat of a double cage is divided, in a sentence for the report. */
export const CAGE_RULE =
  'The two cages of a circuit fitted to a nameplate stand for the displacement of the current in deep bars, so they are one body ' +
  'that takes the heat of both. A stated double cage is one body too, unless the share of its heat capacity that is in the outer ' +
  'cage is stated: then each cage takes its own heat.';

/** Which cage of the circuit is a body of its own beside the rest. */
export interface CageBodies {
  /** Index of the outer cage in the circuit; null: all cages are one body. */
  readonly outer: 0 | 1 | null;
  /** Its share of the cages' heat capacity; 0 where it is no body. */
  readonly outerShare: number;
}

/**
 * Applies `CAGE_RULE`. The outer cage is the one with more resistance for its leakage.
 *
 * @param cageIsFitted the double cage was fitted to a nameplate
 */
export function cageBodies(
  { cages }: Pick<MachineData, 'cages'>,
  thermal: ThermalData | undefined,
  cageIsFitted: boolean,
): CageBodies {
  const share = thermal?.outerCageShare ?? null;
  const [first, second] = cages;
  if (share === null || cageIsFitted || first === undefined || second === undefined)
    return { outer: null, outerShare: 0 };
  return { outer: first.Rr / first.Llr >= second.Rr / second.Llr ? 0 : 1, outerShare: share };
}

/** What the inner cage (or both as one body) and the outer cage get of something that each cage of the circuit has. */
export function perBody(
  perCage: readonly number[],
  { outer }: CageBodies,
): { cage: number; outerCage: number } {
  const all = perCage.reduce((sum, value) => sum + value, 0);
  const outerCage = outer === null ? 0 : perCage[outer]!;
  return { cage: all - outerCage, outerCage };
}
