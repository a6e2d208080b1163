import type { Origin } from './origin.ts';
import type { MachineData } from './scenario.ts';

/** Design letter of NEMA MG 1 or IEC 60034-12 (Y: meant for star-delta starting). */
export type DesignLetter = 'A' | 'B' | 'C' | 'D' | 'N' | 'NY' | 'NE' | 'NEY' | 'H' | 'HY' | 'HE' | 'HEY';

/** What a nameplate or catalogue sheet says, SI; null: not known. */
export interface Nameplate {
  /** As wound and connected. */
  readonly connection: 'star' | 'delta';
  /** Rated shaft power, W. */
  readonly power: number;
  /** Line-to-line, V r.m.s. */
  readonly lineVoltage: number;
  /** Hz */
  readonly frequency: number;
  /** Number of poles. */
  readonly poles: number;
  /** rad/s */
  readonly speed: number | null;
  /** Line current, A r.m.s. */
  readonly current: number | null;
  /** Power factor at rated output, 0 … 1. */
  readonly powerFactor: number | null;
  /** 0 … 1 */
  readonly efficiency: number | null;
  /**
   * How the locked-rotor current is stated: `ofRated`, a multiple of the rated current; `amperes`, A r.m.s.; or the code
   * `letter` of NEMA MG 1.
   */
  readonly lockedRotorCurrent:
    | { readonly kind: 'multiple'; readonly ofRated: number }
    | { readonly kind: 'amperes'; readonly amperes: number }
    | { readonly kind: 'codeLetter'; readonly letter: string }
    | null;
  /** Locked-rotor torque, multiple of the rated torque. */
  readonly lockedRotorTorque: number | null;
  /** Breakdown torque, multiple of the rated torque. */
  readonly breakdownTorque: number | null;
  readonly design: DesignLetter | null;
  /** Rotor inertia, kg·m². */
  readonly inertia: number | null;
}

/** Readings of the three classic tests (IEEE 112, IEC 60034-28), line quantities, SI. */
export interface TestReadings {
  /** As wound and connected. */
  readonly connection: 'star' | 'delta';
  /** Number of poles. */
  readonly poles: number;
  /** Rated line-to-line voltage that the circuit is for, V r.m.s. */
  readonly lineVoltage: number;
  /** Rated frequency that the circuit is for, Hz. */
  readonly frequency: number;
  /** Direct current between two terminals: resistance between terminals, Ω. */
  readonly terminalResistance: number;
  readonly noLoad: TestReading;
  readonly lockedRotor: TestReading;
  /** Stator share of the locked-rotor leakage reactance, 0 … 1; null: by design letter. */
  readonly statorLeakageShare: number | null;
  readonly design: DesignLetter | null;
  /** Rotor inertia, kg·m². */
  readonly inertia: number | null;
}

/** One balanced three-phase reading. */
export interface TestReading {
  /** Line-to-line, V r.m.s. */
  readonly voltage: number;
  /** Mean line current, A r.m.s. */
  readonly current: number;
  /** Three-phase, W. */
  readonly power: number;
  /** Hz */
  readonly frequency: number;
}

/** One item of a nameplate beside what the circuit gives. */
export interface NameplateItem {
  /** Words: "locked-rotor current". */
  readonly name: string;
  /** SI unit symbol, '1' for a ratio. */
  readonly unit: string;
  /** What the estimation aimed at, in `unit`; null: nothing was stated nor taken from a table. */
  readonly target: number | null;
  /** What the circuit gives, in `unit`. */
  readonly reproduced: number;
  /** value: to be met; least, most: a limit of a standard, to be kept. */
  readonly kind: 'value' | 'least' | 'most';
  /** Relative error (reproduced − target)/target; null without a target, and where a limit is kept. */
  readonly error: number | null;
  /** Where the target comes from, in words: "given", "IEC 60034-12, design N", "assumed: typical". */
  readonly source: string;
}

/** A circuit found from a nameplate or from tests, and how well it does. */
export interface Estimation {
  readonly from: 'nameplate' | 'tests';
  readonly items: readonly NameplateItem[];
  /** Root mean square of the errors, a ratio: of a nameplate each over what it is allowed, of tests as they are. */
  readonly misfit: number;
  /** What a reader must know; empty when nothing. */
  readonly remarks: readonly string[];
  /** Keys of the scenario that changed the circuit after it was found: the items hold for the circuit before. */
  readonly changedBy?: readonly string[];
}

/** The circuit part of a machine. */
export type CircuitPart = Pick<MachineData, 'Rs' | 'Lls' | 'Lm' | 'cages' | 'inertia' | 'rated'> &
  Partial<Pick<MachineData, 'core' | 'mechanicalLoss' | 'leakageSaturation' | 'mainSaturation'>>;

/** What an estimator gives back. */
export interface EstimatedCircuit {
  readonly circuit: CircuitPart;
  readonly estimation: Estimation;
  /** Every quantity that was filled in or found, paths within the machine section. */
  readonly notes: readonly Origin[];
}

/**
 * Finds a circuit from what is known about a machine. The scenario room only knows its shape: the estimation itself
 * needs the machine's equations, which come after it.
 */
export interface CircuitEstimator {
  /**
   * The circuit of a machine of which the nameplate is known.
   *
   * @throws ScenarioError when the nameplate contradicts itself
   */
  fromNameplate(nameplate: Nameplate): EstimatedCircuit;
  /**
   * The circuit of a machine of which the readings of the tests are known.
   *
   * @throws ScenarioError when the readings contradict each other
   */
  fromTests(readings: TestReadings): EstimatedCircuit;
}
