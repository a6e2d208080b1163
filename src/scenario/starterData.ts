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
  /** The control circuit that drives the coils; absent: commands act on the coils themselves. */
  readonly control?: ControlData;
  /** A mechanical brake on the motor shaft; absent: none. */
  readonly brake?: BrakeData;
  /** A source of direct current for two leads; absent: none. */
  readonly injection?: InjectionData;
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

/** A mechanical brake on the motor shaft. It lets go when a contactor is energised. */
export interface BrakeData {
  /** At the motor shaft, N·m. */
  readonly torque: number;
  /** From the release of its coil to its full torque, s. */
  readonly delay: number;
  /** onCommand: with that command alone; afterPlugging: also when plugging has ended. */
  readonly sets: 'onCommand' | 'afterPlugging';
}

/** A rectifier that feeds direct current into terminal B and out of terminal C. */
export interface InjectionData {
  /** Without load, V. */
  readonly voltage: number;
  /** Of transformer and rectifier, Ω. */
  readonly resistance: number;
  /** From the command to energising its contactor, s. */
  readonly delay: number;
  /** Its contactor: coil energised → contacts touch, s. */
  readonly closingTime: number;
  /** How long the current flows, s; null: until the zero-speed switch opens. */
  readonly duration: number | null;
}

/** A fault of the installation. */
export type StarterFault =
  /** A supply phase is lost (a fuse, a broken line): its current ends at its next zero from `from` on, s. */
  | { readonly kind: 'lostPhase'; readonly phase: PhaseName; readonly from: number }
  /** A pole of a contactor does not part any more once it has touched. */
  | { readonly kind: 'weldedPole'; readonly contactor: 'forward' | 'reverse'; readonly pole: PhaseName }
  /** A pole of a contactor never touches. */
  | { readonly kind: 'deadPole'; readonly contactor: 'forward' | 'reverse'; readonly pole: PhaseName }
  /** All three poles of a contactor, and with them its armature, stay where they are once it has closed. */
  | { readonly kind: 'weldedContactor'; readonly contactor: 'forward' | 'reverse' }
  /**
   * What the zero-speed switch does in each `mode`. stuckClosed: the switch's contacts stay actuated once they are.
   * stuckOpen: its make contacts never close (a broken wire); its break contacts work. doesNotPickUp: it sees no speed at all (a slipping belt): nothing ever actuates.
   */
  | { readonly kind: 'zeroSpeedSwitch'; readonly mode: 'stuckClosed' | 'stuckOpen' | 'doesNotPickUp' }
  /**
   * An auxiliary contact of a contactor or its run relay is `stuck` open or closed: holdIn is the make contact that holds
   * the contactor or its run relay in, interlock the break contact in the other contactor's circuit.
   */
  | {
      readonly kind: 'auxiliaryContact';
      readonly contactor: 'forward' | 'reverse';
      readonly contact: 'holdIn' | 'interlock';
      readonly stuck: 'open' | 'closed';
    }
  /** The overload relay heats but never trips. */
  | { readonly kind: 'overloadNeverTrips' }
  /** All three phases are lost at `from` and are back at `until`, s; null: they stay away. */
  | { readonly kind: 'supplyLost'; readonly from: number; readonly until: number | null }
  /** Nothing mechanical keeps both contactors from being in. */
  | { readonly kind: 'mechanicalInterlockMissing' };

/** Two speeds of a zero-speed switch, magnitudes at the motor shaft. All in rad/s. */
export interface SwitchSpeeds {
  /** The contact opens when the speed falls below this. */
  readonly dropOutSpeed: number;
  /** The contact closes when the speed rises above this (> drop-out). */
  readonly pickUpSpeed: number;
}

/** Works alike in both directions unless `reverse` says otherwise. */
export interface ZeroSpeedSwitchData extends SwitchSpeeds {
  /** Speeds for reverse rotation where they differ; absent: as forward. */
  readonly reverse?: SwitchSpeeds;
  /** A solenoid keeps the contacts from being actuated until a contactor has been in; absent: none. */
  readonly lockout?: true;
  /** From the crossing to the contact, s. */
  readonly delay: number;
}

/**
 * How the control circuit is wired, named by what it does.
 *
 * - throughStop: reversing only through stop; the contactors' break contacts bar the other direction.
 * - direct: reversing directly; each button's break contact drops the other contactor, so the motor is plugged.
 * - plugStop: one direction; when the contactor drops, the other one brakes until the zero-speed switch opens.
 * - plugStopBoth: both directions with run relays; stop brakes with the opposite contactor until the switch opens.
 * - antiPlugging: as direct, but a direction stays blocked while the machine turns the other way.
 * - jog: inching in both directions, no hold-in; letting go brakes until the switch opens.
 */
export type SchemeName = 'throughStop' | 'direct' | 'plugStop' | 'plugStopBoth' | 'antiPlugging' | 'jog';

/** What a hand can act on. emergencyStop stays pressed until released; overloadTest trips, overloadReset resets the relay. */
export type ButtonName =
  | 'forward'
  | 'reverse'
  | 'stop'
  | 'reset'
  | 'emergencyStop'
  | 'overloadTest'
  | 'overloadReset';

/** The control circuit. */
export interface ControlData {
  readonly scheme: SchemeName;
  /** plugStop, plugStopBoth, jog: braking needs a relay that remembers that a contactor has driven the machine. */
  readonly memoryRelay: boolean;
  /** Starting needs a relay that the reset button sets while no start button is pressed, and that drops with the supply. */
  readonly readyRelay: boolean;
  readonly emergencyStop: EmergencyStopData;
  /** A contactor is energised only when the other one has been out for this long, s; 0: no timer. */
  readonly changeoverTimer: number;
  /** While one contactor is in the other cannot move. */
  readonly mechanicalInterlock: boolean;
  /** Auxiliary relays: coil energised or released → contacts have moved, s. */
  readonly relayTime: number;
  /** A program reads its inputs and writes its outputs once in this time, s; 0: wired. */
  readonly scanTime: number;
  /** Coils feel the control voltage; null: they do not, only whether it is there. */
  readonly coilVoltage: CoilVoltageData | null;
  /** null: no overload relay. */
  readonly overload: OverloadData | null;
}

/** Shares of the rated control voltage at which coils pick up and drop out. */
export interface CoilVoltageData {
  /** Share of the rated control voltage at which a coil picks up. */
  readonly pickUp: number;
  /** Share of the rated control voltage at which a coil drops out. */
  readonly dropOut: number;
}

/**
 * Stop categories of IEC 60204-1. 0: both coils drop at once. 1: the driving contactor drops, the other may brake until the
 * zero-speed switch opens or `limit` seconds have passed; then both are dead.
 */
export type EmergencyStopData = { readonly category: 0 } | { readonly category: 1; readonly limit: number };

/** Trip classes of IEC 60947-4-1. */
export type TripClass = '5' | '10A' | '10' | '20' | '30';

/** Thermal overload relay in the motor's lines. */
export interface OverloadData {
  /** Current setting, A r.m.s. */
  readonly setting: number;
  readonly tripClass: TripClass;
  /** State at t = 0: cold, or warm as after long running at the setting. */
  readonly start: 'cold' | 'warm';
  /** Whether the thermal memory survives a loss of the supply. */
  readonly memory: 'kept' | 'lost';
}
