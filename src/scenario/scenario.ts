import type { JudgementData } from './judgementData.ts';
import type { ButtonName, StarterData } from './starterData.ts';

export type * from './judgementData.ts';

export type {
  BrakeData,
  ButtonName,
  CoilVoltageData,
  ControlData,
  EmergencyStopData,
  InjectionData,
  LineResistorData,
  OverloadData,
  PhaseName,
  SchemeName,
  StarterData,
  StarterFault,
  SwitchSpeeds,
  TripClass,
  ZeroSpeedSwitchData,
} from './starterData.ts';

/**
 * A scenario: everything that determines a run, as plain readonly data in SI units.
 * The same scenario gives the same result, to the last bit, on one engine version.
 */
export interface Scenario extends JudgementData {
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
  /** Number of pole pairs. */
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
  /**
   * Steps of a start in order, each with its `resistance`, Ω, in the circuit for `duration` seconds after the coil is
   * energised; then none.
   */
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
  /** `coefficient` · ω, the coefficient in N·m·s/rad. */
  | { readonly kind: 'viscous'; readonly coefficient: number }
  /** `coefficient` · ω·|ω|, the coefficient in N·m·s²/rad². */
  | { readonly kind: 'fan'; readonly coefficient: number }
  /** A `torque`, N·m, that does not change sign with direction: positive pulls against forward rotation. */
  | { readonly kind: 'gravity'; readonly torque: number }
  /**
   * Opposes motion with `power` (W) over |ω| above `baseSpeed` (rad/s) and with power/baseSpeed below; as dry friction it holds the
   * shaft at rest.
   */
  | { readonly kind: 'constantPower'; readonly power: number; readonly baseSpeed: number }
  /**
   * Straight lines through points (`speed`, rad/s, and `torque`, N·m) of ascending speed; beyond the ends the last value
   * holds. mirrored: the points are those of speeds ≥ 0 and the torque opposes motion in both directions (the first point's
   * torque then holds the shaft at rest); otherwise the torque is counted as for gravity: positive pulls against forward
   * rotation.
   */
  | {
      readonly kind: 'table';
      readonly points: readonly { readonly speed: number; readonly torque: number }[];
      readonly mirrored: boolean;
    };

/** At rest without flux, or running in the steady state of that direction. */
export type InitialState = 'rest' | 'runningForward' | 'runningReverse';

/**
 * startForward, startReverse: energise that contactor (the other first drops out, the change-over delay runs);
 * plug: drop the running contactor, energise the opposite one until the zero-speed switch opens;
 * coast: drop both; brake: drop both and set the mechanical brake; injectDc: drop both, then direct current into two leads.
 */
export type ActionKind = 'startForward' | 'startReverse' | 'plug' | 'coast' | 'brake' | 'injectDc';

/**
 * What is done at an instant. Without a control circuit in the scenario a command moves the coils itself; with one, people
 * press and release buttons and the circuit decides.
 */
export type Action = Command | ButtonAction;

/** A command that acts on the coils. */
export interface Command {
  /** s */
  readonly at: number;
  readonly do: ActionKind;
}

/** A hand on a device of the control circuit. */
export interface ButtonAction {
  /** s */
  readonly at: number;
  /** What the hand does. */
  readonly do: 'press' | 'release';
  readonly button: ButtonName;
}

/** True for what acts on the coils without a control circuit. */
export function isCommand(action: Action): action is Command {
  return !('button' in action);
}

/** How the run is integrated and when it ends. */
export interface SolverData {
  /** Relative error allowed in each step, a ratio. */
  readonly relativeTolerance: number;
  /** s, or 'auto': until the last action has done its work. */
  readonly endTime: number | 'auto';
  /** Most integration steps in one run before it ends with the status stepLimit. */
  readonly maxSteps: number;
  /** auto: the frame that suits the conducting set; stationary: for cross-checks. */
  readonly frame: 'auto' | 'stationary';
}
