import type { Dimension } from './dimension.ts';

/** A range of plausible values in SI, with the reason for its width. */
export interface Bounds {
  readonly dimension: Dimension;
  readonly min: number;
  /** The smallest value itself is refused. */
  readonly aboveMin?: boolean;
  readonly max: number;
}

/**
 * Wide enough for every real machine, narrow enough that a slipped prefix or a wrong unit is caught.
 * No range is silently applied: a value outside is an error that states the range.
 */
export const bounds = {
  /** From a laboratory model at 10 V to the largest high-voltage motors, about 15 kV. */
  lineVoltage: { dimension: 'voltage', min: 10, max: 20_000 },
  /** From slow test supplies to aircraft networks (400 Hz). */
  frequency: { dimension: 'frequency', min: 10, max: 400 },
  /** Two turns either way; more is a slip of the pen. */
  angle: { dimension: 'angle', min: -4 * Math.PI, max: 4 * Math.PI },
  /** From a wall socket's worth to more than any high-voltage bus bar has. */
  shortCircuitPower: { dimension: 'apparentPower', min: 1e3, max: 1e12 },
  /** 0: no source resistance (a stiff source). Upper end: a laboratory model behind a high resistance. */
  sourceImpedance: { dimension: 'resistance', min: 0, max: 1e4 },
  sourceInductance: { dimension: 'inductance', min: 0, max: 100 },
  /** Multi-megawatt low-voltage machines have tens of µΩ, watt-sized high-voltage ones some kΩ. */
  resistance: { dimension: 'resistance', min: 1e-6, max: 1e5 },
  reactance: { dimension: 'resistance', min: 1e-6, max: 1e6 },
  inductance: { dimension: 'inductance', min: 1e-9, max: 1e4 },
  /** 0 is allowed for one of rotor and load, not for both. Upper end: far above any flywheel, for limit studies. */
  inertia: { dimension: 'inertia', min: 0, max: 1e9 },
  ratedPower: { dimension: 'power', min: 0, aboveMin: true, max: 1e8 },
  ratedCurrent: { dimension: 'current', min: 0, aboveMin: true, max: 1e5 },
  ratedTorque: { dimension: 'torque', min: 0, aboveMin: true, max: 1e8 },
  /** A two-pole machine at 400 Hz turns at 2513 rad/s. */
  speed: { dimension: 'speed', min: 0, aboveMin: true, max: 3000 },
  loadTorque: { dimension: 'torque', min: 0, max: 1e8 },
  gravityTorque: { dimension: 'torque', min: -1e8, max: 1e8 },
  viscousCoefficient: { dimension: 'viscousCoefficient', min: 0, max: 1e8 },
  fanCoefficient: { dimension: 'fanCoefficient', min: 0, max: 1e8 },
  /** Contactors take 5 to 100 ms; large ones with an interposing relay more. */
  operatingTime: { dimension: 'time', min: 0, max: 10 },
  /** A change-over timer may wait for the residual flux to go. */
  changeover: { dimension: 'time', min: 0, max: 60 },
  /** A small relay takes some ms, one with a delay element some hundred. */
  relayTime: { dimension: 'time', min: 0, max: 1 },
  /** A controller that scans more slowly than this drives no contactor. */
  scanTime: { dimension: 'time', min: 0, max: 1 },
  /** Braking that takes longer than a minute has failed. */
  brakingLimit: { dimension: 'time', min: 0, aboveMin: true, max: 60 },
  /** From a touch to an hour. */
  press: { dimension: 'time', min: 0, aboveMin: true, max: 3600 },
  minimumArcingTime: { dimension: 'time', min: 0, max: 1 },
  /** An hour. */
  instant: { dimension: 'time', min: 0, max: 3600 },
  /** Test readings: a locked rotor takes a few volts. */
  testVoltage: { dimension: 'voltage', min: 0, aboveMin: true, max: 20_000 },
  testPower: { dimension: 'power', min: 0, aboveMin: true, max: 1e8 },
  /** Resistance between terminals or of a resistor: from 1 µΩ to a laboratory model's. */
  terminalResistance: { dimension: 'resistance', min: 1e-6, max: 1e5 },
  /** 0: short-circuited, or none. */
  resistor: { dimension: 'resistance', min: 0, max: 1e5 },
  /** From a bell transformer to the largest generator transformers. */
  transformerRating: { dimension: 'apparentPower', min: 100, max: 2e9 },
  copperLoss: { dimension: 'power', min: 0, max: 1e8 },
  /** A hundred kilometres is no motor cable any more. */
  cableLength: { dimension: 'length', min: 0, max: 1e5 },
  /** From telephone wire to bundled bars: 0.1 mm² to 0.01 m². */
  crossSection: { dimension: 'area', min: 1e-7, max: 1e-2 },
  /** Telephone wire has 180 ohm/km. */
  impedancePerLength: { dimension: 'impedancePerLength', min: 0, max: 1 },
  cableImpedance: { dimension: 'resistance', min: 0, max: 1e4 },
  /** From deep cold to the hottest insulation class with a margin. */
  temperature: { dimension: 'temperature', min: -60, max: 300 },
  /** Twenty kilovolts at 10 Hz give 260 Wb. */
  flux: { dimension: 'flux', min: 0, aboveMin: true, max: 1000 },
  lossPower: { dimension: 'power', min: 0, max: 1e8 },
  /** Speeds of the load may lie above the motor's behind a gear that speeds up. */
  tableSpeed: { dimension: 'speed', min: -30_000, max: 30_000 },
  baseSpeed: { dimension: 'speed', min: 0, aboveMin: true, max: 30_000 },
  loadPower: { dimension: 'power', min: 0, max: 1e9 },
  /** From a soft rubber coupling of a model to the shaft of a rolling mill. */
  stiffness: { dimension: 'stiffness', min: 1e-6, max: 1e12 },
  damping: { dimension: 'viscousCoefficient', min: 0, max: 1e8 },
  /** Half a turn of play is no coupling. */
  backlash: { dimension: 'angle', min: 0, max: Math.PI },
  /** An hour: a starting step may wait for an operator. */
  stepDuration: { dimension: 'time', min: 0, aboveMin: true, max: 3600 },
  /** Rectifiers for braking give tens of volts; the highest is that of a rectified low-voltage network. */
  directVoltage: { dimension: 'voltage', min: 0, aboveMin: true, max: 2000 },
  endTime: { dimension: 'time', min: 0, aboveMin: true, max: 3600 },
  /** The hottest insulation class allows 125 K by resistance, a hot spot some more. */
  ratedRise: { dimension: 'temperatureDifference', min: 0, aboveMin: true, max: 200 },
  /** From below the sea to the highest mines. */
  altitude: { dimension: 'length', min: -500, max: 9000 },
  /** Motors stand a locked rotor for some seconds to a minute. */
  lockedRotorTime: { dimension: 'time', min: 0, aboveMin: true, max: 600 },
  /** Aluminium melts at 660 °C. */
  cageTemperature: { dimension: 'temperature', min: -60, max: 700 },
  /** From a gram of copper to some hundred tonnes of iron. */
  heatCapacity: { dimension: 'heatCapacity', min: 0.1, max: 1e8 },
  /** From a toy to a motor of several megawatts, which takes some hours. */
  coolingTime: { dimension: 'time', min: 1, max: 1e6 },
  /** A week. */
  runningTime: { dimension: 'time', min: 0, max: 604_800 },
  /** Breaking capacities, trips and fuse curves: up to what a low-voltage bus bar can feed. */
  faultCurrent: { dimension: 'current', min: 0, aboveMin: true, max: 1e6 },
  /** Contacts bounce for some milliseconds. */
  bounceTime: { dimension: 'time', min: 0, max: 0.1 },
  /** Time–current curves end within some hours. */
  trippingTime: { dimension: 'time', min: 0, aboveMin: true, max: 1e6 },
  /** A hundred times free fall leaves nothing on its place. */
  deceleration: { dimension: 'acceleration', min: 0, aboveMin: true, max: 1000 },
  /** From a watch wheel to a wind rotor. */
  radius: { dimension: 'length', min: 0, aboveMin: true, max: 100 },
  /** A hundred revolutions of creep are a run in reverse. */
  creep: { dimension: 'angle', min: 0, max: 200 * Math.PI },
  /** A million revolutions. */
  stopAngle: { dimension: 'angle', min: 0, aboveMin: true, max: 2e6 * Math.PI },
  stopTime: { dimension: 'time', min: 0, aboveMin: true, max: 3600 },
  brakeTorque: { dimension: 'torque', min: 0, aboveMin: true, max: 1e8 },
  /** What a resistor for the lines may have. */
  plugResistor: { dimension: 'resistance', min: 0, aboveMin: true, max: 1e5 },
} as const satisfies Record<string, Bounds>;

/**
 * Relation between stated rated power, torque and speed (P = T·ω) that is still taken for rounding on a nameplate or
 * for a circuit that does not quite meet it. Horsepower read as kW (34 %) or lbf·ft as N·m (36 %) is caught.
 */
export const ratedPowerMismatch = 0.25;

/** kg·m²; rotor and load together, below any real rotor. */
export const minTotalInertia = 1e-9;

/**
 * Deviation of efficiency × power factor × √3 × voltage × current from the stated power that is still taken for rounding: a
 * power factor of two digits is worth 0.6 %, a current of two digits up to 3 %, a rounded efficiency 0.5 %. More than 5 % is
 * a slip (a wrong unit, the current of another voltage). Common practice, no source.
 */
export const nameplatePowerMismatch = 0.05;

/** Rated slip above which no cage motor is sold: NEMA design D ends at 25 % (MG 1, from memory). */
export const maxRatedSlip = 0.3;

/**
 * Slip up to which the number of poles is read from the rated speed alone; above it the next number of poles could be meant.
 */
export const maxSlipToTellPoles = 0.08;

/** A table of load torque must reach this multiple of synchronous speed: a load that overhauls drives the motor past it. */
export const tableCoverage = 1.2;
