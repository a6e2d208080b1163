import type { LimitsData, Scenario } from '../../scenario/scenario.ts';
import type { Instrument } from './instruments.ts';
import type { LateSwitch } from './lateSwitch.ts';
import type { Pause } from './pause.ts';
import type { QuantityKey } from './quantities.ts';
import type { Tolerance } from './tolerances.ts';

/** A laboratory procedure for one set, with what every reading should be. Plain data, SI. */
export interface LaboratorySheet {
  /** As read; runs of the procedure are made from its data. */
  readonly scenario: Scenario;
  /** In the order of the work. */
  readonly steps: readonly LaboratoryStep[];
  /** What is worked out from the readings afterwards. */
  readonly evaluation: readonly Prediction[];
  /** What a range of the sheet allows for, beside instruments and closing instant. */
  readonly tolerances: readonly Tolerance[];
  /** Number of supply angles that each run was repeated at. */
  readonly closingAngles: number;
  readonly instruments: readonly Instrument[];
  /** Of a start followed by a plug stop, and of a start followed by a full reversal; words: what is missing for it. */
  readonly pauses: {
    /** After a start and a plug stop. */
    readonly plugStop: Pause | string;
    /** After a start and a full reversal. */
    readonly reversal: Pause | string;
  };
  /** How long the trials take at least, pauses included; words: what is missing for it. */
  readonly leastTime:
    | {
        /** In the order of the work. */
        readonly parts: readonly {
          /** The step whose trials they are. */
          readonly step: StepKey;
          /** Number of trials. */
          readonly trials: number;
          /** A trial from its start to the next one's, the pause included, s. */
          readonly each: number;
        }[];
        /** All of them, s. */
        readonly total: number;
      }
    | string;
  /** How far the set turns backwards when the zero-speed switch opens later; empty: it has none, or nothing is plugged. */
  readonly lateSwitch: readonly LateSwitch[];
  /** How long the set turns on without supply and plugging; null: it is not known. */
  readonly turnsOn: {
    /** Upper end of the run-down, s. */
    readonly most: number;
    /** Within the tolerances it may be longer still. */
    readonly isOpen: boolean;
  } | null;
  /** Kinetic energy of rotor and load at the running speed, J: the unit that heat in the rotor is counted in. */
  readonly storedEnergy: number;
  /** Inertia of all that turns, at the motor's shaft, kg·m². */
  readonly inertia: number;
  /** Sentences on what this scenario cannot show and why. */
  readonly leftOut: readonly string[];
}

/** Names of the steps, in the order of the work. */
export type StepKey =
  | 'resistance'
  | 'direction'
  | 'noLoad'
  | 'lockedRotor'
  | 'runDown'
  | 'start'
  | 'plugStop'
  | 'creep'
  | 'reversal';

/** One step of the procedure. */
export interface LaboratoryStep {
  readonly key: StepKey;
  readonly title: string;
  /** Before it is begun; may be empty. */
  readonly cautions: readonly string[];
  /** Limits of the scenario that this step may pass, by the upper ends of its predictions. */
  readonly limits: readonly {
    /** Which of the scenario's limits. */
    readonly key: Exclude<keyof LimitsData, 'decelerationRadius'>;
    /** What may go beyond it: "The crest of the current". */
    readonly words: string;
    /** What that may do, and who decides. */
    readonly consequence: string;
    /** Upper end of what is predicted, in the SI unit `unit`. */
    readonly value: number;
    /** The limit in the same unit; of a trip the crest of its setting. */
    readonly most: number;
    /** SI unit symbol. */
    readonly unit: string;
  }[];
  /** What to do, in order. */
  readonly doing: readonly string[];
  readonly readings: readonly Prediction[];
}

/** What a reading should be, and within which limits it speaks for the model. SI. */
export interface Prediction {
  readonly key: QuantityKey;
  /** What is read, in words. */
  readonly words: string;
  /** How it is read or worked out. */
  readonly how: string;
  /** What it points to where a reading lies outside. */
  readonly outside: string;
  /** SI unit symbol; '1' for a number. */
  readonly unit: string;
  /** How often it is read; the closing instant differs each time. */
  readonly repeats: number;
  /** Mean over the closing instants, all data as stated; in the SI unit `unit`, as the three below. */
  readonly predicted: number;
  /** Lower end, in that unit: closing instant, every tolerance and the instrument, one added to the other. */
  readonly low: number;
  /** Upper end in the same way, in that unit. */
  readonly high: number;
  /** Over the closing instants alone, all data as stated: what repetition scatters over. */
  readonly scatter: {
    /** Least, in that unit. */
    readonly low: number;
    /** Most, in that unit. */
    readonly high: number;
  };
  /** What makes the range wide, the largest first; parts that move nothing are left out. */
  readonly parts: readonly RangePart[];
  /** A sentence where some run within the tolerances does not get so far, so that the range is open; null: none. */
  readonly open: string | null;
}

/** By how much one cause widens a range. */
export interface RangePart {
  /** The cause, in words. */
  readonly words: string;
  /** Downwards; ≥ 0, in the unit of the reading. */
  readonly down: number;
  /** Upwards; ≥ 0, in the unit of the reading. */
  readonly up: number;
}
