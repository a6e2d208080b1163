import { quarterOfDay } from '../../numeric/calendarDay.ts';
import { missingOf } from './missingOf.ts';
import type {
  ImpossibleStarter,
  KitDemand,
  MaintenancePlan,
  PlannedStarter,
  UnplannedStarter,
  WearingPart,
} from './plan.ts';
import { ascending } from './plannedParts.ts';
import type { PlanRow } from './planRow.ts';
import { planStarter } from './planStarter.ts';
import type { WearOfStarter, WearOutcome } from './starterWear.ts';

/** Days beyond which a date says no more than "not soon": thirty years. Common practice, no source. */
export const PLAN_HORIZON = 10_957;

/** Kit of contacts whose name the table does not state. */
export const UNNAMED_KIT = 'contacts, no kit named';

/** Spare for a part that is not the contacts. */
const SPARES = {
  contactor: 'contactor',
  interlock: 'mechanical interlock',
  zeroSpeedSwitch: 'zero-speed switch',
} as const;

/**
 * Plans the replacement of what wears in many starters: every part, when it is due, and on what that hangs.
 *
 * @param asOf day from which the plan looks ahead, days since 1970-01-01
 * @param wearOf finds the wear per operation; asked once for rows alike
 */
export function planStarters(rows: readonly PlanRow[], asOf: number, wearOf: WearOfStarter): MaintenancePlan {
  const found = new Map<string, WearOutcome>();
  const shared: WearOfStarter = (row, inertiaFactor) => {
    const { stopBy, pluggingShare, inchingShare } = row.duty;
    const duty = [stopBy, pluggingShare, inchingShare];
    const key = JSON.stringify([row.motor, row.load, row.contactor, duty, inertiaFactor]);
    const known = found.get(key) ?? wearOf(row, inertiaFactor);
    found.set(key, known);
    return known;
  };
  const starters: PlannedStarter[] = [];
  const lacking: UnplannedStarter[] = [];
  const impossible: ImpossibleStarter[] = [];
  for (const row of rows) {
    const missing = missingOf(row);
    const outcome = missing.length > 0 ? { missing } : planStarter(row, asOf, shared);
    if ('missing' in outcome) lacking.push({ tag: row.tag, missing: outcome.missing });
    else if ('reasons' in outcome) impossible.push({ tag: row.tag, reasons: outcome.reasons });
    else starters.push(outcome);
  }
  starters.sort((a, b) => ascending(a.expected, b.expected) || (a.tag < b.tag ? -1 : 1));
  return { asOf, starters, lacking, impossible, kits: kitsOf(starters, asOf), computed: found.size };
}

/** True where the plan needs the wear of plugging. */
export function doesPlug({ duty }: PlanRow): boolean {
  return duty.pluggingShare === null ? duty.stopBy === 'plug' : duty.pluggingShare > 0;
}

/** What has to be in store for a part of a starter. */
export function spareOf(part: WearingPart, spareKit: string | null): string {
  return part === 'contacts' ? (spareKit ?? UNNAMED_KIT) : SPARES[part];
}

function kitsOf(starters: readonly PlannedStarter[], asOf: number): KitDemand[] {
  const demands = new Map<
    string,
    { at: Pick<KitDemand, 'year' | 'quarter' | 'kit'>; expected: string[]; earliest: string[] }
  >();
  for (const by of ['expected', 'earliest'] as const)
    for (const { tag, spareKit, parts } of starters)
      for (const part of parts) {
        const day = Math.max(asOf, Math.floor(part[by]));
        if (day - asOf > PLAN_HORIZON) continue;
        const at = { ...quarterOfDay(day), kit: spareOf(part.part, spareKit) };
        const key = JSON.stringify(at);
        const demand = demands.get(key) ?? { at, expected: [], earliest: [] };
        demand[by].push(tag);
        demands.set(key, demand);
      }
  return [...demands.values()]
    .map(({ at, expected, earliest }) => ({ ...at, expected, earliest }))
    .sort((a, b) => a.year - b.year || a.quarter - b.quarter || (a.kit < b.kit ? -1 : 1));
}
