import { dateOfDay } from '../numeric/calendarDay.ts';
import type { DesignLetter } from '../scenario/nameplate.ts';
import type { StatedLockedRotorCurrent } from '../scenario/nameplateInput.ts';
import type { PlanDuty, PlanLoad, PlanRow } from '../survey/plan/planRow.ts';
import { inspectionOf } from './inspectionOf.ts';
import type { PlanColumnName } from './planColumns.ts';

/** Columns that hold words. */
type WordColumn = 'tag' | 'description' | 'code letter' | 'design' | 'load kind' | 'stop by' | 'spare kit';

/** What the cells of one row say; absent: nothing. */
export type PlanCells = Readonly<
  Partial<
    Record<Exclude<PlanColumnName, WordColumn | 'locked-rotor current'>, number> &
      Record<WordColumn, string> & { 'locked-rotor current': StatedLockedRotorCurrent }
  >
>;

/** Two cells of a row that exclude each other. */
export interface CellConflict {
  readonly column: PlanColumnName;
  readonly message: string;
  readonly expected: string;
}

/** Shares that add up to more than this are refused; the excess over one is rounding. */
const WHOLE = 1 + 1e-9;

/** Puts the cells of one row together, and says which of them contradict each other. */
export function planRowOf(cells: PlanCells): {
  readonly row: PlanRow;
  readonly conflicts: readonly CellConflict[];
} {
  const { inspection, conflict, gap } = inspectionOf(cells);
  const duty: PlanDuty = {
    stopBy: (cells['stop by'] as PlanDuty['stopBy'] | undefined) ?? null,
    pluggingShare: cells['share of plugging'] ?? null,
    inchingShare: cells['share of inching'] ?? null,
    operationsPerDay: cells['operations per day'] ?? null,
    counter: cells.counter ?? null,
    counterDay: cells['counter date'] ?? null,
    operationsSinceNew: cells['operations since new'] ?? null,
    contactsChanged: cells['contacts changed'] ?? null,
  };
  const row: PlanRow = {
    tag: cells.tag ?? '',
    description: cells.description ?? null,
    motor: {
      power: cells.power ?? null,
      lineVoltage: cells.voltage ?? null,
      frequency: cells.frequency ?? null,
      speed: cells.speed ?? null,
      poles: cells.poles ?? null,
      current: cells['rated current'] ?? null,
      powerFactor: cells['power factor'] ?? null,
      efficiency: cells.efficiency ?? null,
      lockedRotorCurrent: cells['locked-rotor current'] ?? null,
      codeLetter: cells['code letter'] ?? null,
      lockedRotorTorque: cells['locked-rotor torque'] ?? null,
      breakdownTorque: cells['breakdown torque'] ?? null,
      design: (cells.design as DesignLetter | undefined) ?? null,
      inertia: cells['rotor inertia'] ?? null,
    },
    load: {
      inertia: cells['load inertia'] ?? null,
      kind: (cells['load kind'] as PlanLoad['kind'] | undefined) ?? null,
      torque: cells['load torque'] ?? null,
    },
    contactor: {
      ratedCurrentAc3: cells['contactor current AC-3'] ?? null,
      ratedCurrentAc4: cells['contactor current AC-4'] ?? null,
      lifeAc3: cells['life AC-3'] ?? null,
      lifeAc4: cells['life AC-4'] ?? null,
      mechanicalLife: cells['contactor mechanical life'] ?? null,
      interlockMechanicalLife: cells['interlock mechanical life'] ?? null,
      switchMechanicalLife: cells['switch mechanical life'] ?? null,
    },
    duty,
    inspection,
    spareKit: cells['spare kit'] ?? null,
    gaps: gap === null ? [] : [gap],
  };
  return { row, conflicts: [...(conflict === null ? [] : [conflict]), ...conflictsOf(row, cells)] };
}

function conflictsOf({ duty, load, inspection }: PlanRow, cells: PlanCells): CellConflict[] {
  const found: CellConflict[] = [];
  const { contactsChanged, counterDay, counter, operationsSinceNew } = duty;
  if (contactsChanged !== null)
    for (const [column, day] of [
      ['counter date', counterDay],
      ['inspected', inspection?.day ?? null],
    ] as const)
      if (day !== null && day < contactsChanged)
        found.push({
          column,
          message: `${dateOfDay(day)} is before the contacts were changed`,
          expected: `${dateOfDay(contactsChanged)} or later`,
        });
  if (duty.stopBy === 'coast' && (duty.pluggingShare ?? 0) > 0)
    found.push({
      column: 'share of plugging',
      message: 'is above 0 for a starter that coasts',
      expected: '`plug` under stop by, or no share of plugging',
    });
  const shares = (duty.pluggingShare ?? 0) + (duty.inchingShare ?? 0);
  if (shares > WHOLE)
    found.push({
      column: 'share of plugging',
      message: `is ${Math.round(100 * shares)} % together with the share of inching`,
      expected: 'at most 100 % together',
    });
  if (counter !== null && operationsSinceNew !== null && operationsSinceNew < counter)
    found.push({
      column: 'operations since new',
      message: `${operationsSinceNew} is below the counter since the last change of contacts`,
      expected: `at least ${counter}`,
    });
  if (load.torque !== null && load.torque < 0 && load.kind !== 'gravity')
    found.push({
      column: 'load torque',
      message: 'is negative',
      expected: 'a torque of at least 0, or `gravity` under load kind',
    });
  if (load.kind === 'none' && cells['load torque'] !== undefined && cells['load torque'] !== 0)
    found.push({
      column: 'load torque',
      message: 'is stated for a load of kind none',
      expected: 'no torque',
    });
  return found;
}
