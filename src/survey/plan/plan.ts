/** Parts of a starter that wear out. */
export type WearingPart = 'contacts' | 'contactor' | 'interlock' | 'zeroSpeedSwitch';

/** What a range of dates may hang on. */
export type AssumptionKey = 'life' | 'pluggingShare' | 'loadInertia' | 'operationsPerDay' | 'reading';

/** How far one assumption by itself moves the expected day of a part. */
export interface AssumptionEffect {
  readonly key: AssumptionKey;
  /** "life of the contacts (generic curve), × 0.5 to × 2". */
  readonly words: string;
  /** Earliest day that this assumption alone moves it to, days since 1970-01-01. */
  readonly earliest: number;
  /** Latest day that this assumption alone moves it to, days since 1970-01-01. */
  readonly latest: number;
}

/** When one part of a starter is due. All days are days since 1970-01-01; infinite: it does not wear. */
export interface PlannedPart {
  readonly part: WearingPart;
  /** "contacts of the reversing contactor". */
  readonly words: string;
  /** The day to expect. */
  readonly expected: number;
  /** With every assumption at the end that is unfavourable to this part at once. */
  readonly earliest: number;
  /** With every assumption at the end that is favourable to this part at once. */
  readonly latest: number;
  /** Operations of the starter that a new part lasts. */
  readonly life: number;
  /** Where that life comes from, in words. */
  readonly lifeOrigin: string;
  /** Share of that life used up on the day of the plan. */
  readonly used: number;
  /** What moves the day of this part, in falling order; the first dominates. Empty when nothing does. */
  readonly effects: readonly AssumptionEffect[];
}

/** When one starter is due. All days are days since 1970-01-01; infinite: it does not wear. */
export interface PlannedStarter {
  readonly tag: string;
  readonly description: string | null;
  /** Name of the kit of contacts that is kept for it; null: not stated. */
  readonly spareKit: string | null;
  /** W; null: not stated. */
  readonly motorPower: number | null;
  /** Every part whose life is known, by expected day; the first one governs. */
  readonly parts: readonly [PlannedPart, ...PlannedPart[]];
  /** Expected day of the part that governs. */
  readonly expected: number;
  /** First of the earliest days of all parts: no part is due before. */
  readonly earliest: number;
  /** First of the latest days of all parts: by then one is due at the latest. */
  readonly latest: number;
  /** Number of operations a day that the plan reckons with. */
  readonly operationsPerDay: number;
  /** Share of the operations that plug, 0 … 1, that the plan reckons with. */
  readonly pluggingShare: number;
  /** The inspection of the contacts and what it changed, in words; null: none. */
  readonly inspection: string | null;
  /** What its row states twice and differently, as sentences to be checked first; empty: nothing. */
  readonly doubts: readonly string[];
  /** What was taken for what is not stated, and what is not counted. */
  readonly remarks: readonly string[];
}

/** A row that lacks what a plan needs. */
export interface UnplannedStarter {
  readonly tag: string;
  /** Each in words, with the column that would state it. */
  readonly missing: readonly string[];
}

/** A row whose data contradict each other, or describe a drive that does not work. */
export interface ImpossibleStarter {
  readonly tag: string;
  /** Each in words. */
  readonly reasons: readonly string[];
}

/** Spares of one kind that are needed in one calendar quarter. */
export interface KitDemand {
  /** Number of the year, such as 2026. */
  readonly year: number;
  /** Number of the quarter, 1 to 4. */
  readonly quarter: number;
  /** Name of the kit of contacts. */
  readonly kit: string;
  /** Tags of starters with a part whose expected day falls into the quarter (those overdue: into that of the plan's day). */
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
  /** In the order of the table. */
  readonly impossible: readonly ImpossibleStarter[];
  /** One for each kind of kit and each quarter in which some are needed. */
  readonly kits: readonly KitDemand[];
  /** How many times wear was computed; rows alike share one computation. */
  readonly computed: number;
}
