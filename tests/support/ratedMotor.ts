import type { Nameplate } from '../../src/scenario/nameplate.ts';

/** An invented 11 kW motor with everything on its plate, the way catalogues state such motors. */
export const FULL_PLATE: Nameplate = {
  connection: 'delta',
  power: 11e3,
  lineVoltage: 400,
  frequency: 50,
  poles: 4,
  speed: (1465 * Math.PI) / 30,
  current: 21.5,
  powerFactor: 0.83,
  efficiency: 0.89,
  lockedRotorCurrent: { kind: 'multiple', ofRated: 7 },
  lockedRotorTorque: 2.3,
  breakdownTorque: 2.9,
  design: 'N',
  inertia: 0.06,
};

/** The same with power, voltage, frequency and poles alone. */
export const BARE_PLATE: Nameplate = {
  ...FULL_PLATE,
  speed: null,
  current: null,
  powerFactor: null,
  efficiency: null,
  lockedRotorCurrent: null,
  lockedRotorTorque: null,
  breakdownTorque: null,
  design: null,
  inertia: null,
};
