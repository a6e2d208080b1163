import type { PhaseName } from '../../scenario/scenario.ts';
import type { ContactorName } from '../../starter/starter.ts';
import type { BreakingCategory } from './breakingCategory.ts';
import type { ContactLife, LifeBasis } from './contactLife.ts';
import type { MakeErosion } from './makeErosion.ts';

/** What can happen to a pair of contactors once. */
export const WEAR_EVENTS = ['start', 'stop', 'plugStop', 'reversal', 'inch'] as const;

/**
 * start: the driving contactor makes at rest. stop: it breaks the running current and the motor coasts. plugStop: it breaks
 * the running current, the other one makes against the rotation and breaks near rest. reversal: the same up to the making,
 * and each contactor takes each part in turn. inch: the driving contactor makes and breaks the current of the motor at rest.
 */
export type WearEvent = (typeof WEAR_EVENTS)[number];

/** A count of operations with the range its uncertainty gives it; all three are counts. */
export interface CountRange {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** A day with its range, YYYY-MM-DD; null beyond the year 9999. */
export interface DateRange {
  /** The day to expect. */
  readonly value: string | null;
  /** The earliest day. */
  readonly low: string | null;
  /** The latest day. */
  readonly high: string | null;
}

/** running: the current of the running motor. plugging: near rest, against the rotation. inching: of the motor at rest. */
export type BreakingOccasion = 'running' | 'plugging' | 'inching';

/** start: at rest. plugging: against the rotation. */
export type MakingOccasion = 'start' | 'plugging';

/** One breaking of a contactor and what it costs. */
export interface BreakingWear {
  readonly occasion: BreakingOccasion;
  /** A r.m.s. */
  readonly current: number;
  /** V r.m.s. line to line. */
  readonly recoveryVoltage: number;
  readonly category: BreakingCategory;
  /** If every operation were of this kind. */
  readonly life: ContactLife;
  /** Words: simulated or estimated, and how. */
  readonly origin: string;
  /** Mean arc charge of each pole, C. */
  readonly arcCharges: Readonly<Record<PhaseName, number>>;
}

/** One contactor. */
export interface ContactorWear {
  readonly contactor: ContactorName;
  /** The reversing contactor plugs; the other one drives. */
  readonly role: 'driving' | 'plugging';
  /** What its lives stand on, with the range about them. */
  readonly basis: LifeBasis;
  /** What it breaks in this duty; without a duty, whatever is known. */
  readonly breakings: readonly BreakingWear[];
  /** What bouncing costs where it makes in this duty; `wear` null: not judged. */
  readonly makings: Partial<Readonly<Record<MakingOccasion, MakeErosion>>>;
  /**
   * Share of the contacts that one event uses up; null where it is not known. Make erosion that is not judged is left out of it,
   * and `missing` says so.
   */
  readonly perEvent: Readonly<Record<WearEvent, number | null>>;
  /** Something that this duty wears them by is not known, or there is no duty. */
  readonly wearUnknown: boolean;
  /** Operations of the duty until the contacts are to be replaced; null: not known (`wearUnknown`), or nothing wears them. */
  readonly operations: CountRange | null;
  /** The same less `operationsSince`. */
  readonly operationsLeft: CountRange | null;
  /** Day on which they are due. */
  readonly replacement: DateRange | null;
  /** The pole with most arc charge in the duty, and that charge over the mean of the poles; `low` of the counts allows for it. */
  readonly worstPole: { readonly phase: PhaseName; readonly factor: number } | null;
  /** Number of closings of this contactor for each operation of the duty; null: no duty is stated. */
  readonly closingsPerOperation: number | null;
  /** Operations of the duty until its mechanical life is over; null: not known. */
  readonly mechanicalOperations: number | null;
  /** Utilization category of IEC 60947-4-1 to choose it by; null: nothing is known to choose by. */
  readonly recommendedCategory: 'AC-3' | 'AC-4' | null;
  /** Why that category, in words. */
  readonly categoryReason: string;
  /** Most operations per hour the maker allows in that category; null: not stated. */
  readonly mostOperationsPerHour: number | null;
  /** What could not be found, each in words with its reason. */
  readonly missing: readonly string[];
  /** What a reader must know of the figures. */
  readonly remarks: readonly string[];
}

/** Both contactors, and what wears beside their contacts. */
export interface ContactWear {
  readonly forward: ContactorWear;
  readonly reverse: ContactorWear;
  /** The contactor whose contacts are to be replaced first; null: not known. */
  readonly governing: ContactorName | null;
  /** Operations of the duty until the mechanical life of the interlock is over; null: not known. */
  readonly interlockOperations: number | null;
  /** Operations of the duty until the mechanical life of the zero-speed switch is over; null: not known. */
  readonly switchOperations: number | null;
}
