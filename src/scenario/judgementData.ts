/**
 * What a judgement of a starter needs beyond the run: every section is optional, and none of them changes the run. Null: not
 * known. A limit that is `'none'` is stated not to apply.
 */
export interface JudgementData {
  readonly titleBlock?: TitleBlock;
  readonly thermal?: ThermalData;
  readonly duty?: DutyData;
  readonly contactors?: ContactorsData;
  readonly limits?: LimitsData;
  readonly protection?: ProtectionData;
  readonly alternatives?: AlternativesData;
}

/** What stands in the title block of the calculation note, as written; null: left blank. */
export interface TitleBlock {
  /** Where the drive stands. */
  readonly plant: string | null;
  /** What the plant calls the drive. */
  readonly tag: string | null;
  /** Revision of the note. */
  readonly revision: string | null;
  /** Initials of who prepared it. */
  readonly prepared: string | null;
  /** Initials of who checked it. */
  readonly checked: string | null;
  /** As written; never read from a clock. */
  readonly date: string | null;
}

/** Thermal class of the winding's insulation, IEC 60034-1 and IEC 60085: the temperature in °C that gives it its name. */
export type InsulationClass = '130' | '155' | '180';

/** What is known about how the motor heats, cools and what it withstands. Temperatures in °C, rises in K. */
export interface ThermalData {
  readonly insulationClass: InsulationClass | null;
  /** Rise of the winding at rated load, K. */
  readonly ratedRise: number | null;
  /** Of the cooling air, °C. */
  readonly ambient: number;
  /** Above sea level, m. */
  readonly altitude: number;
  /** How long the locked rotor is withstood from ambient temperature, s. */
  readonly lockedRotorTimeCold: number | null;
  /** The same from the temperature of rated load, s. */
  readonly lockedRotorTimeHot: number | null;
  /** Highest temperature of the cage, °C. */
  readonly cageLimit: number | null;
  /** Temperature of the cage at rated load, °C. */
  readonly cageRatedTemperature: number | null;
  /** Heat capacity of the stator winding, J/K. */
  readonly windingHeatCapacity: number | null;
  /** Heat capacity of the cage, J/K. */
  readonly cageHeatCapacity: number | null;
  /** Heat capacity of core and frame, J/K. */
  readonly frameHeatCapacity: number | null;
  /** Time constant of the whole motor while it runs, s. */
  readonly coolingTimeConstant: number | null;
  /** Heat given off at standstill over that while running, for the same rise, 0 … 1. */
  readonly standstillCooling: number | null;
  /** A stated double cage: the share of the cage's heat capacity that is in the outer cage; null: both cages are one body. */
  readonly outerCageShare: number | null;
  /** The maker's permissible number of starts per hour without load and load inertia. */
  readonly noLoadStartsPerHour: number | null;
}

/** What one operation consists of. */
export type CycleName = 'startCoast' | 'startPlugStop' | 'fullReversal';

/** How often the starter works. */
export interface DutyData {
  /** What one operation consists of. */
  readonly cycle: CycleName;
  /** 1/h, where the starter works. */
  readonly operationsPerHour: number | null;
  /** Number of operations a day. */
  readonly operationsPerDay: number | null;
  /** From the end of one start to the stopping command, under load, s; null: given by the cyclic duration factor. */
  readonly runningTime: number | null;
  /** Running (start and stop included) over the whole cycle, 0 … 1; null: not stated. */
  readonly cyclicDurationFactor: number | null;
  /**
   * Share of all operations that are stopped by plugging, 0 … 1; what is neither this nor inching is started and left to
   * coast.
   */
  readonly pluggingShare: number;
  /** Share of all operations that are inching, 0 … 1. */
  readonly inchingShare: number;
  /** Day of the last change of contacts, YYYY-MM-DD. */
  readonly contactsChanged: string | null;
  /** Operations since then as a counter shows them. */
  readonly operationsSince: number | null;
}

/** Data of one contactor as its maker states them. Currents r.m.s. */
export interface ContactorData {
  /** Rated operational voltage, V; null: that of the supply. */
  readonly ratedVoltage: number | null;
  /** Rated operational current in AC-3, A. */
  readonly ratedCurrentAc3: number;
  /** Rated operational current in AC-4, A; null: not stated. */
  readonly ratedCurrentAc4: number | null;
  /** Electrical life in AC-3 at the rated current of AC-3, number of operations. */
  readonly lifeAc3: number | null;
  /** Electrical life in AC-4 at the rated current of AC-4, number of operations. */
  readonly lifeAc4: number | null;
  /**
   * Life, number of `operations`, against breaking `current`, A r.m.s., at full recovery voltage; ascending currents; null:
   * none.
   */
  readonly lifeTable: readonly { readonly current: number; readonly operations: number }[] | null;
  /** Operations without current. */
  readonly mechanicalLife: number | null;
  /** Rated making capacity, A; null: the multiple of IEC 60947-4-1. */
  readonly makingCapacity: number | null;
  /** Rated breaking capacity, A; null: the multiple of IEC 60947-4-1. */
  readonly breakingCapacity: number | null;
  /** How long the contacts bounce when they touch, s; null: not known. */
  readonly bounceTime: number | null;
  /** Most operations per hour in AC-3, 1/h. */
  readonly operationsPerHourAc3: number | null;
  /** Most operations per hour in AC-4, 1/h. */
  readonly operationsPerHourAc4: number | null;
}

/** Both contactors and the other devices that wear. */
export interface ContactorsData {
  readonly forward: ContactorData;
  readonly reverse: ContactorData;
  /** Mechanical life of the interlock, number of operations. */
  readonly interlockMechanicalLife: number | null;
  /** Mechanical life of the zero-speed switch, number of operations. */
  readonly switchMechanicalLife: number | null;
}

/** A limit, stated not to apply, or not known. SI. */
export type Limit = number | 'none' | null;

/** Limits the user sets. */
export interface LimitsData {
  /** Setting of an instantaneous trip, A r.m.s.: it must not trip, so √2 times the setting is the limit of the crest. */
  readonly instantaneousTrip: Limit;
  /** Largest voltage dip at the motor terminals, share of the supply's voltage. */
  readonly voltageDip: Limit;
  /** Torque limits at the motor shaft, N·m; the smallest of what is given counts as limit of the shaft. */
  readonly couplingTorque: Limit;
  readonly gearboxTorque: Limit;
  readonly keyTorque: Limit;
  readonly brakeTorque: Limit;
  /** Largest deceleration of the load, m/s², at `decelerationRadius` of the load's shaft. */
  readonly deceleration: Limit;
  /** m */
  readonly decelerationRadius: number | null;
  /** Height of the load's centre of gravity over half its base in the direction of motion: it tips beyond g over this ratio. */
  readonly tippingRatio: Limit;
  /** Coefficient of friction under the load: it slides beyond μ·g. */
  readonly slidingFriction: Limit;
  /** Reverse rotation after the stop, rad at the motor shaft. */
  readonly reverseCreep: Limit;
  /** Least time between the last arc's end and the reversing contactor's touch, s. */
  readonly deadTimeMargin: Limit;
  /** Longest stop from the command, s, and most revolutions meanwhile (rad). */
  readonly stopTime: Limit;
  readonly stopAngle: Limit;
  /** Least number of operations the contacts must last. */
  readonly contactLife: Limit;
}

/** A protective device's curve as the user gives it. */
export interface ProtectionCurve {
  readonly name: string;
  readonly kind: 'breaker' | 'fuse';
  /** Points of `current`, A r.m.s., ascending, and `time`, s, descending. */
  readonly points: readonly { readonly current: number; readonly time: number }[];
}

/** Protective devices beside those of the control circuit. */
export interface ProtectionData {
  /**
   * Overload relay where the starter has no control circuit to hold it: `setting`, A r.m.s., and `tripClass` of IEC
   * 60947-4-1.
   */
  readonly overload: {
    readonly setting: number;
    readonly tripClass: '5' | '10A' | '10' | '20' | '30';
  } | null;
  readonly curves: readonly ProtectionCurve[];
}

/** What the alternatives are compared with. Absent parts are chosen and marked as assumed. */
export interface AlternativesData {
  /**
   * A mechanical brake on the motor shaft: its `torque`, N·m, and `delay` from the command until it acts, s; null: not
   * compared.
   */
  readonly mechanicalBrake: { readonly torque: number; readonly delay: number } | null;
  /** Direct current in two leads, A; null: chosen. */
  readonly injectionCurrent: number | null;
  /** From the forward contactor's parting to the closing of the direct current, s; null: until the flux has decayed. */
  readonly injectionDelay: number | null;
  /** Resistor in each line while plugging, Ω; null: chosen to meet the limits. */
  readonly lineResistance: number | null;
  /** Longer dead time, s; null: 1.5 open-circuit time constants. */
  readonly deadTime: number | null;
}
