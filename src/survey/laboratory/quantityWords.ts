import type { QuantityKey } from './quantities.ts';

/** What is said about a quantity on the sheet. */
export interface QuantityWords {
  readonly words: string;
  /** How it is read or worked out. */
  readonly how: string;
  /** What a reading outside its range points to. */
  readonly outside: string;
}

/** Words for every quantity. */
export const QUANTITY_WORDS: Readonly<Record<QuantityKey, QuantityWords>> = {
  terminalResistance: {
    words: 'Resistance between two terminals',
    how: 'mean of the three pairs',
    outside:
      'Another winding temperature than stated, the resistance of leads, or another winding than the data say. One pair alone off: a loose terminal or a fault of that winding; go no further.',
  },
  noLoadCurrent: {
    words: 'Line current, running light',
    how: 'mean of the three lines',
    outside:
      'Another magnetising reactance or voltage than stated: the iron saturates above its rated voltage. Lines that differ by more than the accuracy of the meter: an unbalanced supply.',
  },
  noLoadPower: {
    words: 'Power, running light',
    how: 'all three phases together, after the bearings have run warm',
    outside: 'Friction or iron loss is not as stated; the run-down tells which.',
  },
  noLoadSpeed: {
    words: 'Speed, running light',
    how: 'at the shaft',
    outside: 'The set is loaded by more than its friction, or the supply has another frequency.',
  },
  lockedRotorVoltage: {
    words: 'Line voltage at rated current, rotor locked',
    how: 'raised slowly from zero until the mean of the three currents is the rated one',
    outside:
      'The leakage reactances are not as stated: with saturation the voltage is lower the higher the current.',
  },
  lockedRotorPower: {
    words: 'Power at rated current, rotor locked',
    how: 'read together with the voltage, within seconds',
    outside: 'The resistances are not as stated, or the rotor is warm from an earlier try.',
  },
  runDownTime: {
    words: 'Run-down to standstill',
    how: 'plugging switched off by the instructor, so that the set coasts; from the opening of the contactor until rest',
    outside:
      'Friction or inertia is not as stated. Together with the time to half speed it tells dry friction from windage.',
  },
  halfSpeedTime: {
    words: 'Run-down to half speed',
    how: 'in the same run',
    outside: 'As above. Both times off by the same share: the inertia, or all of the friction.',
  },
  startTime: {
    words: 'Run-up time',
    how: 'from the touch of the contacts to 95 % of the running speed',
    outside:
      'Longer: more inertia, a low voltage, a warm rotor, or one phase missing (then it hums; switch off). Shorter: less inertia than stated.',
  },
  startWorstCycleCurrent: {
    words: 'Start: largest r.m.s. over one period',
    how: 'inrush function of the clamp, or one period of the record; the line where it is largest',
    outside: 'The leakage paths saturate (larger), or the voltage dips (smaller).',
  },
  startPeakCurrent: {
    words: 'Start: largest crest in any line',
    how: 'record of all three lines',
    outside:
      'Probes that do not pass direct current, a record that samples too slowly, or saturation (larger).',
  },
  plugPeakCurrent: {
    words: 'Plug stop: largest crest in any line',
    how: 'record of all three lines; nothing is changed between the trials but the instant at which the button is pressed',
    outside:
      'Always larger: the leakage paths saturate, which a linear circuit does not know. Larger now and then: the dead time varies more than allowed for. Never near the upper end: too few trials.',
  },
  partingToTouch: {
    words: 'Plug stop: dead time, parting to touch',
    how: 'from an auxiliary contact, or from the end of the current to its return: the arcs then count as closed',
    outside:
      'A contactor slower or faster than stated, a worn contact, or a delay relay that is set otherwise.',
  },
  stopTimeFromTouch: {
    words: 'Plug stop: touch to zero speed',
    how: 'record of speed and currents',
    outside:
      'As for the run-up time. Much longer, with the currents gone before the end: the zero-speed switch opens too early and the flywheel coasts.',
  },
  stopRevolutions: {
    words: 'Plug stop: revolutions, command to zero speed',
    how: 'pulses or marks counted on the record',
    outside: 'The stopping time should be off by the same share; if not, pulses were miscounted.',
  },
  creepAngle: {
    words: 'Turned backwards after zero speed, switch as set',
    how: 'mark on the flywheel, or pulses after zero speed',
    outside:
      'The switch opens earlier or later than stated: its setting, its delay, or the opening time of the contactor.',
  },
  reversalTime: {
    words: 'Full reversal: touch to 95 % of the running speed the other way',
    how: 'record of speed',
    outside: 'As for the run-up time.',
  },
  startShaftTorque: {
    words: 'Start: largest torque between motor and load',
    how: 'not read',
    outside: 'Not read.',
  },
  plugShaftTorque: {
    words: 'Plug stop: largest torque between motor and load',
    how: 'not read',
    outside: 'Not read.',
  },
  shortCircuitResistance: {
    words: 'Stator and rotor resistance together, per phase',
    how: 'locked-rotor power over three times the squared current',
    outside: 'See the locked-rotor readings.',
  },
  shortCircuitReactance: {
    words: 'Stator and rotor leakage reactance together, per phase',
    how: 'root of squared impedance less squared resistance; impedance is line voltage over √3 times current',
    outside: 'See the locked-rotor readings.',
  },
  noLoadReactance: {
    words: 'Impedance running light, per phase',
    how: 'line voltage over √3 times current; nearly stator leakage and magnetising reactance together',
    outside: 'See the readings running light.',
  },
  meanFriction: {
    words: 'Mean friction torque between full and half speed',
    how: 'J as stated above, times half the running speed (rad/s), over the run-down to half speed',
    outside: 'See the run-down.',
  },
  stopToStartTime: {
    words: 'Time of a plug stop over that of a start',
    how: 'quotient of the two readings',
    outside: 'One of the two was read from another instant.',
  },
  reversalToStartTime: {
    words: 'Time of a reversal over that of a start',
    how: 'quotient of the two readings',
    outside: 'One of the two was read from another instant.',
  },
  startHeatMultiple: {
    words: 'Rotor heat of a start',
    how: 'from the record of speed: each small step of time gives torque (J times slope, and friction) times slip speed times the step; their sum over ½·J·ω² (speeds in rad/s)',
    outside: 'The inertia used is not that of the set, or the slope was smoothed over too long a stretch.',
  },
  plugHeatMultiple: {
    words: 'Rotor heat of a plug stop',
    how: 'the same, with slip speed counted against the reversed field: synchronous speed plus shaft speed; friction helps and is taken off',
    outside: 'As above.',
  },
  reversalHeatMultiple: {
    words: 'Rotor heat of a full reversal',
    how: 'the same over both halves',
    outside: 'As above. It should be the sum of stop and start.',
  },
};
