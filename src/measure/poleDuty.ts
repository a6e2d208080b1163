import type { PhaseName } from '../scenario/scenario.ts';
import type { ContactorName } from '../starter/starter.ts';

/** What one pole of a contactor does to a current once: it makes it, or it breaks it. */
export type PoleDuty = MakingDuty | BreakingDuty;

/** A pole touches. */
export interface MakingDuty {
  readonly kind: 'making';
  readonly contactor: ContactorName;
  readonly phase: PhaseName;
  /** Touch, s. */
  readonly t: number;
  /** Largest |current| in the first supply period after the touch (or until the pole parts), A. */
  readonly crest: number;
  /** R.m.s. over that period, A. */
  readonly rms: number;
  /** Charge ∫|i| dt over the bounce time after the touch, C; null: no bounce time is known. */
  readonly bounceCharge: number | null;
}

/** A pole parts and its arc clears. */
export interface BreakingDuty {
  readonly kind: 'breaking';
  readonly contactor: ContactorName;
  readonly phase: PhaseName;
  /** Parting and clearing, s. */
  readonly t: number;
  readonly clears: number;
  /** |current| when the contacts part, A. */
  readonly current: number;
  /** ∫|i| dt while the arc burns, C. */
  readonly arcCharge: number;
  /** Between the lines of source and motor once no pole conducts, power-frequency value, V r.m.s. line to line. */
  readonly recoveryVoltage: number;
}
