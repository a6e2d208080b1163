/**
 * A scenario: everything that determines a run, as plain readonly data in SI units.
 * The same scenario gives the same result, to the last bit, on one engine version.
 */
export interface Scenario {
  readonly schemaVersion: 1;
  readonly title: string;
  /** Free text about the setting; may be empty. */
  readonly description: string;
  readonly supply: Supply;
  readonly machine: MachineData;
  readonly load: LoadData;
  readonly starter: StarterData;
  /** State at t = 0: at rest without flux, or running in the steady state that circuit and load give. */
  readonly initial: InitialState;
  /** Ordered by time. */
  readonly actions: readonly Action[];
  readonly solver: SolverData;
}

/** Balanced three-phase source behind its impedance. */
export interface Supply {
  /** Line-to-line voltage, V r.m.s. */
  readonly lineVoltage: number;
  /** Hz */
  readonly frequency: number;
  /** Supply angle φ on phase A at t = 0, rad: u_A = √(2/3)·V_LL·cos(ωt + φ). */
  readonly angle: number;
  /** Source resistance per phase, Ω (0: infinitely stiff). */
  readonly sourceResistance: number;
  /** Source inductance per phase, H (0: infinitely stiff). */
  readonly sourceInductance: number;
}

/** Circuit per phase of the equivalent star, rotor referred to the stator. */
export interface MachineData {
  /** As wound; the circuit below is already the star equivalent. */
  readonly connection: 'star' | 'delta';
  readonly polePairs: number;
  /** Stator resistance, Ω. */
  readonly Rs: number;
  /** Stator leakage inductance, H. */
  readonly Lls: number;
  /** Magnetising inductance, H. */
  readonly Lm: number;
  /** One cage, or two in parallel. */
  readonly cages: readonly Cage[];
  /** Rotor inertia, kg·m². */
  readonly inertia: number;
  readonly rated: RatedData;
}

/** One rotor cage. */
export interface Cage {
  /** Rotor resistance, Ω. */
  readonly Rr: number;
  /** Rotor leakage inductance, H. */
  readonly Llr: number;
}

/** What the nameplate says; null where it is not given. Resolved by `ratedPoint` in machine/. */
export interface RatedData {
  /** Line current, A r.m.s. */
  readonly current: number | null;
  /** N·m */
  readonly torque: number | null;
  /** Shaft power, W. */
  readonly power: number | null;
  /** rad/s, mechanical */
  readonly speed: number | null;
}

/** What the motor drives, referred to its shaft. */
export interface LoadData {
  /** Load inertia at the motor shaft, kg·m². */
  readonly inertia: number;
  /** Summed; an empty list is no load torque. */
  readonly torques: readonly LoadTorque[];
}

/** One part of the load torque. */
export type LoadTorque =
  /** Dry friction: opposes motion with `torque`; holds the shaft at rest up to `breakaway` (both N·m, ≥ 0). */
  | { readonly kind: 'friction'; readonly torque: number; readonly breakaway: number }
  /** coefficient · ω; N·m·s/rad */
  | { readonly kind: 'viscous'; readonly coefficient: number }
  /** coefficient · ω·|ω|; N·m·s²/rad² */
  | { readonly kind: 'fan'; readonly coefficient: number }
  /** Does not change sign with direction: positive pulls against forward rotation; N·m. */
  | { readonly kind: 'gravity'; readonly torque: number };

/** Motor terminal or supply phase. */
export type PhaseName = 'A' | 'B' | 'C';

/** The forward and the reversing contactor, and the zero-speed switch. */
export interface StarterData {
  /** Coil energised → contacts touch, s; both contactors. */
  readonly closingTime: number;
  /** Coil de-energised → contacts part, s; both contactors. */
  readonly openingTime: number;
  /** Extra time of each pole (motor terminals A, B, C) to touch, s, ≥ 0. */
  readonly closingScatter: readonly [number, number, number];
  /** Extra time of each pole (motor terminals A, B, C) to part, s, ≥ 0. */
  readonly openingScatter: readonly [number, number, number];
  /** From the outgoing coil's de-energising to the incoming coil's energising, s. */
  readonly changeoverDelay: number;
  /** How the delay was stated; a stated dead time fixes the delay: dead time = delay + closing − opening. */
  readonly changeoverGivenAs: 'delay' | 'deadTime' | 'default';
  /** arcing: a parted pole conducts until its own current zero. ideal: poles interrupt and transfer at once. */
  readonly poles: 'arcing' | 'ideal';
  /** A current zero earlier than this after parting does not extinguish the arc, s. */
  readonly minimumArcingTime: number;
  /** The two phases the reversing contactor exchanges. */
  readonly exchangedPhases: 'AB' | 'BC' | 'CA';
  /** Null: no zero-speed switch; plugging then runs on into full reversal. */
  readonly zeroSpeedSwitch: ZeroSpeedSwitchData | null;
}

/** Works alike in both directions; speeds are magnitudes at the motor shaft, rad/s. */
export interface ZeroSpeedSwitchData {
  /** The contact opens when the speed falls below this. */
  readonly dropOutSpeed: number;
  /** The contact closes when the speed rises above this (> drop-out). */
  readonly pickUpSpeed: number;
  /** From the crossing to the contact, s. */
  readonly delay: number;
}

/** At rest without flux, or running in the steady state of that direction. */
export type InitialState = 'rest' | 'runningForward' | 'runningReverse';

/**
 * startForward, startReverse: energise that contactor (the other first drops out, the change-over delay runs);
 * plug: drop the running contactor, energise the opposite one until the zero-speed switch opens;
 * coast: drop both.
 */
export type ActionKind = 'startForward' | 'startReverse' | 'plug' | 'coast';

/** A command at an instant. */
export interface Action {
  /** s */
  readonly at: number;
  readonly do: ActionKind;
}

/** How the run is integrated and when it ends. */
export interface SolverData {
  readonly relativeTolerance: number;
  /** s, or 'auto': until the last action has done its work. */
  readonly endTime: number | 'auto';
  /** Most integration steps in one run before it ends with the status stepLimit. */
  readonly maxSteps: number;
  /** auto: the frame that suits the conducting set; stationary: for cross-checks. */
  readonly frame: 'auto' | 'stationary';
}
