import type { Channel, ThermalRecord } from '../../simulate/channels.ts';
import type { UnitSystem } from '../formatQuantity.ts';
import type { Quantity } from '../palette.ts';
import type { Traces } from '../traces.ts';

/**
 * One run as plain data for pictures that move: made where the run was made, posted to where it is drawn. Columns are evenly spaced in
 * time and in displayed units; angles are in rad, shares of one.
 */
export interface Film {
  readonly units: UnitSystem;
  /** s */
  readonly tStart: number;
  readonly tEnd: number;
  readonly columns: FilmColumns;
  readonly energies: FilmEnergies;
  /** What every device, coil and pole did. */
  readonly channels: readonly Channel[];
  /** Thermal memory of the overload relay; null: there is none. */
  readonly thermal: ThermalRecord | null;
  /** Everything discrete, in words, in order of time. */
  readonly events: readonly FilmEvent[];
  /** What the terminals are connected to, in order of time; each holds until the next. */
  readonly feeds: readonly FilmFeed[];
  readonly base: FilmBase;
  /** What else is switched, that no channel records; absent: nothing. */
  readonly auxiliaries?: readonly FilmAuxiliary[];
}

/** Columns of one length. */
export interface FilmColumns extends Traces {
  /** r/min */
  readonly loadSpeed: Float64Array;
  /** Shaft position since t = 0, rad mechanical. */
  readonly position: Float64Array;
  /** Terminal voltage, stator and rotor flux linkage as space vectors in stationary axes, α on phase A; V, Wb crest. */
  readonly uAlpha: Float64Array;
  readonly uBeta: Float64Array;
  readonly psiAlpha: Float64Array;
  readonly psiBeta: Float64Array;
  readonly psiRAlpha: Float64Array;
  readonly psiRBeta: Float64Array;
}

/** Name of a column. */
export type FilmColumn = keyof FilmColumns;

/** Where the energy has gone since the start of the run, in displayed units, against the instants `t`. */
export interface FilmEnergies {
  /** s, ascending; not evenly spaced. */
  readonly t: Float64Array;
  readonly rows: readonly FilmEnergy[];
}

/** One destination of energy. */
export interface FilmEnergy {
  readonly key:
    | 'source'
    | 'lines'
    | 'stator'
    | 'cage'
    | 'rotorResistors'
    | 'iron'
    | 'magnetic'
    | 'shaft'
    | 'load'
    | 'in';
  readonly label: string;
  readonly quantity: Quantity;
  /** Cumulative, one value per instant of `FilmEnergies.t`. */
  readonly values: Float64Array;
}

/** Something discrete, with its cause. */
export interface FilmEvent {
  /** s */
  readonly t: number;
  readonly text: string;
}

/** From `t` on the terminals are connected with this phase sequence. */
export interface FilmFeed {
  /** s */
  readonly t: number;
  /** 1 forward, −1 reverse, 0 not to the supply. */
  readonly sequence: 1 | -1 | 0;
  /** Conducting terminals. */
  readonly conducting: 3 | 2 | 0;
}

/** A bypass contactor, a brake, a source of direct current, a supply phase that is lost: when it was on. */
export interface FilmAuxiliary {
  readonly label: string;
  /** In words, as for "closed" and "open". */
  readonly onWord: string;
  readonly offWord: string;
  /** The first one is its state at t = 0, s. */
  readonly changes: readonly { readonly t: number; readonly on: boolean }[];
}

/** What pictures are scaled by, in displayed units; crest values for currents, voltages and fluxes. */
export interface FilmBase {
  readonly currentCrest: number;
  readonly torque: number;
  /** Synchronous speed, r/min. */
  readonly synchronousSpeed: number;
  /** Supply, V line r.m.s. */
  readonly lineVoltage: number;
  /** Crest of the phase voltage, V. */
  readonly voltageCrest: number;
  /** Stator flux linkage at no load, Wb crest. */
  readonly flux: number;
  readonly polePairs: number;
  /** Hz */
  readonly frequency: number;
}
