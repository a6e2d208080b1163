import { dayOfDate } from '../../src/numeric/calendarDay.ts';
import type { PlanRow } from '../../src/survey/plan/planRow.ts';

/** Parts of a row that a test states; the rest is that of a starter that lacks nothing. */
export interface RowParts {
  readonly tag?: string;
  readonly motor?: Partial<PlanRow['motor']>;
  readonly load?: Partial<PlanRow['load']>;
  readonly contactor?: Partial<PlanRow['contactor']>;
  readonly duty?: Partial<PlanRow['duty']>;
  readonly inspection?: PlanRow['inspection'];
  readonly spareKit?: string | null;
  readonly description?: string | null;
}

/** Day number of a date that is one. */
export function day(date: string): number {
  const found = dayOfDate(date);
  if (found === null) throw new Error(`${date} is no date`);
  return found;
}

/** A starter that plugs every stop ten times a day since the first of January 2026. */
export function planRow(parts: RowParts = {}): PlanRow {
  return {
    tag: parts.tag ?? 'P1',
    description: parts.description ?? null,
    motor: {
      power: 7500,
      lineVoltage: 400,
      frequency: 50,
      speed: 152.4,
      poles: null,
      current: null,
      powerFactor: null,
      efficiency: null,
      lockedRotorCurrent: { kind: 'multiple', ofRated: 6.8 },
      codeLetter: null,
      lockedRotorTorque: null,
      breakdownTorque: null,
      design: null,
      inertia: null,
      ...parts.motor,
    },
    load: { inertia: 0.1, kind: 'friction', torque: 20, ...parts.load },
    contactor: {
      ratedCurrentAc3: 18,
      ratedCurrentAc4: null,
      lifeAc3: null,
      lifeAc4: null,
      mechanicalLife: null,
      interlockMechanicalLife: null,
      switchMechanicalLife: null,
      ...parts.contactor,
    },
    duty: {
      stopBy: 'plug',
      pluggingShare: null,
      inchingShare: null,
      operationsPerDay: 10,
      counter: null,
      counterDay: null,
      operationsSinceNew: null,
      contactsChanged: day('2026-01-01'),
      ...parts.duty,
    },
    inspection: parts.inspection ?? null,
    spareKit: parts.spareKit === undefined ? 'kit 18' : parts.spareKit,
    gaps: [],
  };
}
