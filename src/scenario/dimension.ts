/** The kinds of quantity a scenario speaks of. */
export type Dimension =
  | 'voltage'
  | 'current'
  | 'frequency'
  | 'power'
  | 'apparentPower'
  | 'resistance'
  | 'inductance'
  | 'inertia'
  | 'torque'
  | 'speed'
  | 'time'
  | 'angle'
  | 'viscousCoefficient'
  | 'fanCoefficient'
  | 'flux'
  | 'length'
  | 'area'
  | 'impedancePerLength'
  | 'stiffness'
  | 'temperature'
  | 'temperatureDifference'
  | 'heatCapacity'
  | 'acceleration';

/** What is known about one dimension of quantities. */
export interface DimensionEntry {
  /** As it reads in a sentence, with its article. */
  readonly words: string;
  /** The SI unit in which numbers are kept, in the spelling of the unit library. */
  readonly si: string;
  /** The unit to suggest where none was written. */
  readonly usual: string;
  /** Spellings to choose a "did you mean" from. */
  readonly spellings: readonly string[];
}

/** One row per dimension. Short-circuit power is apparent power and has a dimension of its own: MW is not MVA. */
export const dimensions: Readonly<Record<Dimension, DimensionEntry>> = {
  voltage: { words: 'a voltage', si: 'V', usual: 'V', spellings: ['V', 'kV', 'mV'] },
  current: { words: 'a current', si: 'A', usual: 'A', spellings: ['A', 'kA', 'mA'] },
  frequency: { words: 'a frequency', si: 'Hz', usual: 'Hz', spellings: ['Hz', 'kHz'] },
  power: { words: 'a power', si: 'W', usual: 'kW', spellings: ['W', 'kW', 'MW', 'hp', 'PS', 'hpE'] },
  apparentPower: {
    words: 'an apparent power',
    si: 'VA',
    usual: 'MVA',
    spellings: ['VA', 'kVA', 'MVA', 'GVA'],
  },
  resistance: { words: 'a resistance or reactance', si: 'ohm', usual: 'ohm', spellings: ['ohm', 'mohm'] },
  inductance: { words: 'an inductance', si: 'H', usual: 'mH', spellings: ['H', 'mH', 'uH'] },
  inertia: {
    words: 'a moment of inertia',
    si: 'kg m^2',
    usual: 'kg m^2',
    spellings: ['kg m^2', 'g m^2', 'lb ft^2', 'lb in^2'],
  },
  torque: {
    words: 'a torque',
    si: 'N m',
    usual: 'N m',
    spellings: ['N m', 'kN m', 'lbf ft', 'lbf in'],
  },
  speed: { words: 'a speed', si: 'rad/s', usual: 'rpm', spellings: ['rpm', 'r/min', 'rad/s'] },
  time: { words: 'a time', si: 's', usual: 'ms', spellings: ['s', 'ms', 'us', 'min', 'h'] },
  angle: { words: 'an angle', si: 'rad', usual: 'deg', spellings: ['deg', 'rad', 'rev'] },
  viscousCoefficient: {
    words: 'a viscous coefficient',
    si: 'N m s/rad',
    usual: 'N m s/rad',
    spellings: ['N m s/rad', 'N m/rpm', 'lbf ft/rpm', 'lbf ft s/rad'],
  },
  fanCoefficient: {
    words: 'a fan coefficient',
    si: 'N m s^2/rad^2',
    usual: 'N m s^2/rad^2',
    spellings: ['N m s^2/rad^2', 'N m/rpm^2'],
  },
  flux: { words: 'a flux linkage', si: 'Wb', usual: 'Wb', spellings: ['Wb', 'mWb'] },
  length: { words: 'a length', si: 'm', usual: 'm', spellings: ['m', 'mm', 'km', 'ft', 'kft'] },
  area: { words: 'a cross-section', si: 'm^2', usual: 'mm^2', spellings: ['mm^2', 'kcmil'] },
  impedancePerLength: {
    words: 'a resistance or reactance per length',
    si: 'ohm/m',
    usual: 'ohm/km',
    spellings: ['ohm/km', 'mohm/m', 'ohm/kft'],
  },
  stiffness: {
    words: 'a torsional stiffness',
    si: 'N m/rad',
    usual: 'N m/rad',
    spellings: ['N m/rad', 'kN m/rad', 'N m/deg', 'lbf ft/rad', 'lbf in/rad'],
  },
  // Kept in degrees Celsius: it only ever meets the constants of the standards, which are in degrees Celsius.
  temperature: { words: 'a temperature', si: 'degC', usual: 'degC', spellings: ['degC', 'degF', 'K'] },
  temperatureDifference: { words: 'a temperature rise', si: 'K', usual: 'K', spellings: ['K'] },
  heatCapacity: { words: 'a heat capacity', si: 'J/K', usual: 'kJ/K', spellings: ['J/K', 'kJ/K'] },
  acceleration: {
    words: 'an acceleration or deceleration',
    si: 'm/s^2',
    usual: 'm/s^2',
    spellings: ['m/s^2', 'ft/s^2', 'g0'],
  },
};
