/**
 * What energies and extremes of the machine are made of at one instant, as places in an array of numbers: it is read some thousand times a run, and
 * numbers in an array cost a third of what they cost in an object.
 */
export const FLOW = {
  /** Stator current in stationary axes, A. */
  iAlpha: 0,
  iBeta: 1,
  /** From the ideal source, W. */
  sourcePower: 2,
  /** Air-gap torque, N·m. */
  torque: 3,
  /** Squared magnitude of each cage's and the core's current vector, A². */
  irSquared1: 4,
  irSquared2: 5,
  coreSquared: 6,
  /** Squared magnitude of the voltage vector at the motor's terminals, V²; of meaning only while all three are connected. */
  uSquared: 7,
} as const;

/** Numbers that an instant's flows take. */
export const FLOW_COUNT = 8;
