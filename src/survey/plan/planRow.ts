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
  /** Number of poles. */
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
  /** How its torque goes with the speed. */
  readonly kind: (typeof PLAN_LOAD_KINDS)[number] | null;
  /** N·m; of a fan at rated speed. */
  readonly torque: number | null;
}

/** Both contactors, which are alike. */
export interface PlanContactor {
  /** Rated operational current in AC-3, A r.m.s. */
  readonly ratedCurrentAc3: number | null;
  /** Rated operational current in AC-4, A r.m.s. */
  readonly ratedCurrentAc4: number | null;
  /** Electrical life in AC-3, number of operations. */
  readonly lifeAc3: number | null;
  /** Electrical life in AC-4, number of operations. */
  readonly lifeAc4: number | null;
  /** Mechanical life of a contactor, number of operations. */
  readonly mechanicalLife: number | null;
  /** Mechanical life of the interlock, number of operations. */
  readonly interlockMechanicalLife: number | null;
  /** Mechanical life of the zero-speed switch, number of operations. */
  readonly switchMechanicalLife: number | null;
}

/** How the starter is stopped in normal service. */
export const STOP_WORDS = ['plug', 'coast'] as const;

/** What the starter does. */
export interface PlanDuty {
  /** How it is stopped in normal service. */
  readonly stopBy: (typeof STOP_WORDS)[number] | null;
  /** Share of the operations that plug, 0 … 1. */
  readonly pluggingShare: number | null;
  /** Share of the operations that are inching, 0 … 1. */
  readonly inchingShare: number | null;
  /** Number of operations a day. */
  readonly operationsPerDay: number | null;
  /** Number of operations since the last change of contacts. */
  readonly counter: number | null;
  /** Day on which the counter was read, days since 1970-01-01. */
  readonly counterDay: number | null;
  /** Operations since the contactors were new, as counted on the day of the counter, else on the day the contacts were changed. */
  readonly operationsSinceNew: number | null;
  /** Day of the last change of contacts, days since 1970-01-01. */
  readonly contactsChanged: number | null;
}

/** What an inspection found at the contactor whose contacts are worn more. */
export interface Inspection {
  /** Day of the inspection, days since 1970-01-01. */
  readonly day: number;
  /** Share of the wear allowance that is used up: 0 as new, 1 at the limit. */
  readonly worn: number;
  /** What was read, in words: "over-travel 1.4 mm of 2 mm new, 0.5 mm at the limit". */
  readonly reading: string;
}
