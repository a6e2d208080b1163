import type { PhaseName } from '../../scenario/scenario.ts';
import type { BreakingOccasion, BreakingWear, WearEvent } from './contactWearTypes.ts';
import { EVENT_PARTS } from './eventParts.ts';

/** The pole whose contacts wear most. */
export interface WorstPole {
  readonly phase: PhaseName;
  /** Its arc charge over the mean of the three poles. */
  readonly factor: number;
}

/**
 * The pole with the largest arc charge in a duty.
 *
 * @param counts how often each event happens in one operation
 * @returns null where no arc burns
 */
export function worstPole(
  breakings: Partial<Record<BreakingOccasion, BreakingWear>>,
  counts: Readonly<Record<WearEvent, number>>,
  role: 'driving' | 'plugging',
): WorstPole | null {
  const charge: Record<PhaseName, number> = { A: 0, B: 0, C: 0 };
  for (const [event, count] of Object.entries(counts) as [WearEvent, number][]) {
    const { breaks, times } = EVENT_PARTS[role][event];
    const breaking = breaks === undefined ? undefined : breakings[breaks];
    if (breaking === undefined) continue;
    for (const phase of ['A', 'B', 'C'] as const) charge[phase] += count * times * breaking.arcCharges[phase];
  }
  const mean = (charge.A + charge.B + charge.C) / 3;
  if (!(mean > 0)) return null;
  const phase = (['A', 'B', 'C'] as const).reduce((worst, name) =>
    charge[name] > charge[worst] ? name : worst,
  );
  return { phase, factor: charge[phase] / mean };
}
