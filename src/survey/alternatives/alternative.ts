import type { PermissibleOperations } from '../../assess/heat/permissibleOperations.ts';
import type { RunResult } from '../../measure/result.ts';
import type { StopFigures } from '../../measure/stopFigures.ts';

/** Ways to stop a load, in the order of presentation. */
export const STOP_NAMES = [
  'plug',
  'coast',
  'mechanicalBrake',
  'directCurrent',
  'lineResistors',
  'starPlugging',
  'longerDeadTime',
  'throughStop',
] as const;

/** Name of a way to stop. */
export type StopName = (typeof STOP_NAMES)[number];

/** How often the contacts last and how often an hour the motor stands one way of stopping. */
export interface StopCost {
  /** Most operations per hour (start, running, this stop) that the motor's temperatures and the time allow; null: not judged. */
  readonly operationsPerHour: number | null;
  /** What sets that limit: the body that reaches its own first, or time: the cycle has no rest left; null: not judged. */
  readonly binding: PermissibleOperations['binding'] | null;
  /** Operations of this kind until a contactor's contacts are worn, of the one that wears first; null: not judged. */
  readonly contactLife: number | null;
  /** Which contactor that is. */
  readonly wearsFirst: 'forward' | 'reverse' | null;
}

/** One way to stop the load, simulated. */
export interface Alternative {
  readonly name: StopName;
  /** What was set for it, in words, with where that comes from; empty where nothing is set. */
  readonly setting: string;
  /**
   * The resistor per line, the direct current or the dead time that was set: its `value` in its SI `unit`; null: nothing of
   * the kind.
   */
  readonly chosen: { readonly value: number; readonly unit: 'Ω' | 'A' | 's' } | null;
  /** What a reader must know of this way; may be empty. */
  readonly remark: string;
  /** Null where it was not simulated or its run ended badly; `missing` then says why. */
  readonly figures: StopFigures | null;
  readonly cost: StopCost;
  /** From the command to 95 % of the steady speed of the other direction, s; null: it does not reverse. */
  readonly reversalTime: number | null;
  /** The run; null where there is none. */
  readonly result: RunResult | null;
  /** Why there are no figures; null where there are. */
  readonly missing: string | null;
}
