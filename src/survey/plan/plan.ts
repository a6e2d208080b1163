/** Parts of a starter that wear out. */
export type WearingPart = 'contacts' | 'contactor' | 'interlock' | 'zeroSpeedSwitch';

/** What a range of dates may hang on. */
export type AssumptionKey = 'life' | 'pluggingShare' | 'loadInertia' | 'operationsPerDay' | 'reading';

/** How far one assumption by itself moves the expected day. */
export interface AssumptionEffect {
  readonly key: AssumptionKey;
  /** "life of the contacts (generic curve), × 0.5 to × 2". */
  readonly words: string;
  readonly earliest: number;
  readonly latest: number;
}

/** When one starter is due. Days since 1970-01-01; infinite: it does not wear. */
export interface PlannedStarter {
  readonly tag: string;
  readonly description: string | null;
  readonly spareKit: string | null;
  /** W; null: not stated. */
  readonly motorPower: number | null;
  readonly expected: number;
  /** With every assumption at its unfavourable end at once. */
  readonly earliest: number;
  readonly latest: number;
  /** What is due first, and in which words. */
  readonly part: WearingPart;
  readonly partWords: string;
  readonly operationsPerDay: number;
  readonly pluggingShare: number;
  /** Operations that a new part of this kind lasts. */
  readonly life: number;
  /** Where that life comes from, in words. */
  readonly lifeOrigin: string;
  /** Share of that life used up on the day of the plan. */
  readonly used: number;
  /** In falling order of what they move; the first dominates. Empty when none moves anything. */
  readonly effects: readonly AssumptionEffect[];
  /** The inspection and what it changed, in words; null: none. */
  readonly inspection: string | null;
  /** What was taken for what is not stated, and what is not counted. */
  readonly remarks: readonly string[];
}

/** A row that lacks what a plan needs. */
export interface UnplannedStarter {
  readonly tag: string;
  /** Each in words, with the column that would state it. */
  readonly missing: readonly string[];
}

/** Kits of contacts that are needed in one calendar quarter. */
export interface KitDemand {
  readonly year: number;
  readonly quarter: number;
  readonly kit: string;
  /** Tags whose expected day falls into the quarter (those overdue: into that of the plan's day). */
  readonly expected: readonly string[];
  /** The same by the earliest day. */
  readonly earliest: readonly string[];
}

/** The maintenance plan of many starters. */
export interface MaintenancePlan {
  /** Day from which it looks ahead; days since 1970-01-01. */
  readonly asOf: number;
  /** By expected day, then by tag. */
  readonly starters: readonly PlannedStarter[];
  /** In the order of the table. */
  readonly lacking: readonly UnplannedStarter[];
  readonly kits: readonly KitDemand[];
  /** How many times wear was computed; rows alike share one computation. */
  readonly computed: number;
}
