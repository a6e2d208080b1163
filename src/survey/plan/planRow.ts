import type { Nameplate } from '../../scenario/nameplate.ts';
import type { StatedLockedRotorCurrent } from '../../scenario/nameplateInput.ts';

/**
 * One starter of a maintenance plan as its table states it. SI; shares 0 … 1; days since 1970-01-01; null: not stated.
 */
export interface PlanRow {
  readonly tag: string;
  readonly description: string | null;
  /** The part of a nameplate a plan reads. */
  readonly motor: PlanMotor;
  readonly load: PlanLoad;
  readonly contactor: PlanContactor;
  readonly duty: PlanDuty;
  readonly inspection: Inspection | null;
  /** Name of the kit of contacts that is kept for it. */
  readonly spareKit: string | null;
  /** Statements that were begun and lack a part, in words. */
  readonly gaps: readonly string[];
}

/** Nameplate of the motor; power, voltage, frequency, and speed or poles are needed. */
export interface PlanMotor
  extends Pick<
    Nameplate,
    | 'speed'
    | 'current'
    | 'powerFactor'
    | 'efficiency'
    | 'lockedRotorTorque'
    | 'breakdownTorque'
    | 'design'
    | 'inertia'
  > {
  /** W */
  readonly power: number | null;
  /** Line to line, V. */
  readonly lineVoltage: number | null;
  /** Hz */
  readonly frequency: number | null;
  readonly poles: number | null;
  readonly lockedRotorCurrent: StatedLockedRotorCurrent | null;
  /** Code letter of NEMA MG 1. */
  readonly codeLetter: string | null;
}

/** Words for the kinds of load torque that a table may name. */
export const PLAN_LOAD_KINDS = ['friction', 'fan', 'gravity', 'none'] as const;

/** What the motor drives, at its own shaft. */
export interface PlanLoad {
  /** kg·m² */
  readonly inertia: number | null;
  readonly kind: (typeof PLAN_LOAD_KINDS)[number] | null;
  /** N·m; of a fan at rated speed. */
  readonly torque: number | null;
}

/** Both contactors, which are alike. Currents r.m.s., A; lives in operations. */
export interface PlanContactor {
  readonly ratedCurrentAc3: number | null;
  readonly ratedCurrentAc4: number | null;
  readonly lifeAc3: number | null;
  readonly lifeAc4: number | null;
  readonly mechanicalLife: number | null;
  readonly interlockMechanicalLife: number | null;
  readonly switchMechanicalLife: number | null;
}

/** How the starter is stopped in normal service. */
export const STOP_WORDS = ['plug', 'coast'] as const;

/** What the starter does. */
export interface PlanDuty {
  readonly stopBy: (typeof STOP_WORDS)[number] | null;
  readonly pluggingShare: number | null;
  readonly inchingShare: number | null;
  readonly operationsPerDay: number | null;
  /** Operations since the last change of contacts, and the day they were read. */
  readonly counter: number | null;
  readonly counterDay: number | null;
  /** Operations since the contactors were new, as counted on the day of the counter, else on the day the contacts were changed. */
  readonly operationsSinceNew: number | null;
  /** Day of the last change of contacts. */
  readonly contactsChanged: number | null;
}

/** What an inspection found at the contactor whose contacts are worn more. */
export interface Inspection {
  readonly day: number;
  /** Share of the wear allowance that is used up: 0 as new, 1 at the limit. */
  readonly worn: number;
  /** What was read, in words: "over-travel 1.4 mm of 2 mm new, 0.5 mm at the limit". */
  readonly reading: string;
}
