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
  /** Cable from the source to the starter, per phase, in series with the source; absent: none. */
  readonly cable?: CableData;
}

/** Series impedance of one cable conductor. */
export interface CableData {
  /** Ω */
  readonly resistance: number;
  /** H */
  readonly inductance: number;
}

/**
 * Circuit per phase of the equivalent star, rotor referred to the stator. An element that is absent is switched off.
 */
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
  /**
   * Saturation of the main flux path: points of the magnetising curve in ascending order, the origin left out. With it the
   * curve holds instead of `Lm`; `Lm` stays the value of the linear circuit.
   */
  readonly mainSaturation?: readonly MagnetisingPoint[];
  /** Saturation of the leakage paths; `Lls` and `Llr` are the values at small current. */
  readonly leakageSaturation?: LeakageSaturationData;
  /** Iron loss: a short-circuited winding at rest, coupled to the main flux. */
  readonly core?: CoreData;
  /** Bearings and windage of the motor itself. */
  readonly mechanicalLoss?: MechanicalLossData;
  /** Resistors at the slip rings of a wound rotor (one cage then stands for the winding). */
  readonly rotorResistors?: RotorResistorData;
}

/** A point of the magnetising curve, crest values of space vectors. */
export interface MagnetisingPoint {
  /** Magnetising current, A crest. */
  readonly current: number;
  /** Main flux linkage, Wb crest. */
  readonly flux: number;
}

/** Saturation of each leakage path; null: that path stays linear. */
export interface LeakageSaturationData {
  readonly stator: LeakageSaturation | null;
  /** One entry per cage. */
  readonly cages: readonly (LeakageSaturation | null)[];
}

/**
 * A leakage path λ(i) = L·[r·i + (1 − r)·i/√(1 + (i/I)²)]: inductance L at small current, r·L at large.
 */
export interface LeakageSaturation {
  /** I: the current around which the path saturates, A crest. */
  readonly current: number;
  /** r: what is left of the inductance when the path is saturated through, 0 < r ≤ 1. */
  readonly remaining: number;
}

/**
 * Eddy currents in the iron as a short-circuited winding that does not turn: R·i + dψ/dt = 0, ψ = L·i + ψm. With L small
 * against R/ω it is the resistance across the main branch of the textbooks.
 */
export interface CoreData {
  /** Ω per phase of the equivalent star */
  readonly R: number;
  /** H */
  readonly L: number;
}

/** Loss torques on the motor's own shaft. */
export interface MechanicalLossData {
  /** Bearing friction, dry, N·m. */
  readonly friction: number;
  /** Windage ∝ ω·|ω|, N·m·s²/rad². */
  readonly windage: number;
}

/** External resistance per phase at the slip rings, referred to the stator (equivalent star), Ω. */
export interface RotorResistorData {
  /** Steps of a start in order, each in the circuit for `duration` seconds after the coil is energised; then none. */
  readonly starting: readonly { readonly resistance: number; readonly duration: number }[];
  /** In the circuit while the machine plugs or is started against its rotation, before the steps of a start. */
  readonly plugging: number;
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

/** What the motor drives. Behind a gear, inertia and torques are those at the load's own shaft. */
export interface LoadData {
  /** Load inertia at the load's shaft, kg·m². */
  readonly inertia: number;
  /** Absent: load and motor turn alike. */
  readonly gear?: GearData;
  /** Elastic coupling between motor and gear (or load); absent: rigid. */
  readonly coupling?: CouplingData;
  /** Summed; an empty list is no load torque. */
  readonly torques: readonly LoadTorque[];
}

/** A gear between motor and load. */
export interface GearData {
  /** Motor speed over load speed, > 0 (1: same speed). */
  readonly ratio: number;
  /** While the motor drives the load, 0 < η ≤ 1. */
  readonly efficiency: number;
  /** While the load drives the motor (braking), 0 < η ≤ 1. */
  readonly backwardEfficiency: number;
}

/** Elastic coupling, seen at the motor shaft. */
export interface CouplingData {
  /** N·m/rad */
  readonly stiffness: number;
  /** N·m·s/rad; acts while the flanks touch. */
  readonly damping: number;
  /** Free play from flank to flank, rad (0: none). */
  readonly backlash: number;
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
  | { readonly kind: 'gravity'; readonly torque: number }
  /**
   * Opposes motion with power/|ω| above `baseSpeed` (rad/s) and with power/baseSpeed below; as dry friction it holds the
   * shaft at rest.
   */
  | { readonly kind: 'constantPower'; readonly power: number; readonly baseSpeed: number }
  /**
   * Straight lines through points of ascending speed; beyond the ends the last value holds. mirrored: the points are those
   * of speeds ≥ 0 and the torque opposes motion in both directions (the first point's torque then holds the shaft at rest);
   * otherwise the torque is counted as for gravity: positive pulls against forward rotation.
   */
  | {
      readonly kind: 'table';
      readonly points: readonly { readonly speed: number; readonly torque: number }[];
      readonly mirrored: boolean;
    };

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
  /** Resistors between the contactors and the motor, with the contactor that bypasses them; absent: none. */
  readonly lineResistors?: LineResistorData;
  /** A delta machine is connected in star while it plugs; absent: as built. */
  readonly plugConnection?: 'star';
  /**
   * Delta windings by their order: winding A lies between terminals A and B (AB) or A and C (AC); in star all begin at
   * their first terminal. Absent: AB.
   */
  readonly windingOrder?: 'AB' | 'AC';
  /** What is wrong with the installation; absent: nothing. */
  readonly faults?: readonly StarterFault[];
}

/** Equal resistors in all three lines. A start from rest finds them bypassed; plugging finds them in the lines. */
export interface LineResistorData {
  /** Per phase, Ω. */
  readonly resistance: number;
  /** Bypass contactor: coil energised → contacts touch, s; all three poles at once. */
  readonly closingTime: number;
  /** Bypass contactor: coil de-energised → contacts part, s; the current passes to the resistors at once. */
  readonly openingTime: number;
  /** From the energising of the reversing coil to that of the bypass coil, s; null: not while this reversal lasts. */
  readonly bypassAfter: number | null;
}

/** A fault of the installation. */
export type StarterFault =
  /** A supply phase is lost (a fuse, a broken line): its current ends at its next zero from `from` on, s. */
  | { readonly kind: 'lostPhase'; readonly phase: PhaseName; readonly from: number }
  /** A pole of a contactor does not part any more once it has touched. */
  | { readonly kind: 'weldedPole'; readonly contactor: 'forward' | 'reverse'; readonly pole: PhaseName }
  /** A pole of a contactor never touches. */
  | { readonly kind: 'deadPole'; readonly contactor: 'forward' | 'reverse'; readonly pole: PhaseName };

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
