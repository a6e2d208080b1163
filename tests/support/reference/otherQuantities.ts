import type { AdiabaticRises } from '../../../src/assess/heat/adiabaticRises.ts';
import type { PeriodicState } from '../../../src/assess/heat/periodicState.ts';
import type { PermissibleOperations } from '../../../src/assess/heat/permissibleOperations.ts';
import type { WithstandUse } from '../../../src/assess/protection/withstandUse.ts';
import type { ContactorWear, ContactWear } from '../../../src/assess/wear/contactWearTypes.ts';
import type { EnergyLedger } from '../../../src/measure/energyLedger.ts';
import type { BreakingDuty, MakingDuty } from '../../../src/measure/poleDuty.ts';
import { ALTERNATIVE, EXTREME, PART, STARTER } from './planAndStopQuantities.ts';

/** Unit and meaning of one quantity of a report that is no metric. */
export type Words = readonly [unit: string, meaning: string];

/** Quantities that stand together, one for every name of a type: the compiler names what is missing. */
export interface QuantityGroup {
  readonly title: string;
  readonly intro: string;
  readonly rows: Readonly<Record<string, Words>>;
}

const LEDGER = {
  electricalIn: ['J', 'Energy from the ideal source behind the source impedance.'],
  sourceLoss: ['J', 'Heat in the resistance of the source.'],
  cableLoss: ['J', 'Heat in the cable.'],
  lineResistorLoss: ['J', 'Heat in the line resistors, all three together.'],
  statorLoss: ['J', 'Heat in the stator winding.'],
  rotorLoss: ['J', 'Heat in the rotor, one entry per cage.'],
  rotorResistorLoss: ['J', 'Heat in the resistors at the slip rings.'],
  ironLoss: ['J', 'Heat in the iron.'],
  magneticChange: ['J', 'Change of the energy stored in leakage, main and source inductances.'],
  interruptionLoss: ['J', 'Leakage energy released when ideal poles chop the current; 0 with arcing poles.'],
  airGapWork: ['J', 'Work of the air-gap torque on the rotor.'],
  kineticChange: ['J', 'Change of the kinetic energy of rotor and load.'],
  twistChange: ['J', 'Change of the energy stored in the twist of an elastic coupling.'],
  frictionLoss: ['J', 'Heat of dry friction in load and bearings.'],
  windageLoss: ['J', "Loss of the motor's windage."],
  loadWork: ['J', 'Work on every load torque but dry friction.'],
  gearLoss: ['J', 'Heat in the gear.'],
  couplingLoss: ['J', 'Heat in the damping of the coupling.'],
  throughput: ['J', 'Sum of the magnitudes of all terms on the right-hand sides of both balances.'],
  residual: ['1', 'The larger error of the two balances over the throughput.'],
} as const satisfies Readonly<Record<keyof EnergyLedger, Words>>;

const MAKING = {
  kind: ['', '`making`: the pole touches.'],
  contactor: ['', 'Forward or reverse contactor.'],
  phase: ['', 'Phase of the pole.'],
  t: ['s', 'Time of the touch.'],
  crest: [
    'A',
    'Largest magnitude of the current in the first supply period after the touch, or until the pole parts.',
  ],
  rms: ['A', 'R.m.s. value over that period.'],
  bounceCharge: [
    'C',
    'Integral of the magnitude of the current over the bounce time after the touch; missing without a bounce time.',
  ],
} as const satisfies Readonly<Record<keyof MakingDuty, Words>>;

const BREAKING = {
  kind: ['', '`breaking`: the pole parts and its arc clears.'],
  contactor: ['', 'Forward or reverse contactor.'],
  phase: ['', 'Phase of the pole.'],
  t: ['s', 'Time at which the contacts part.'],
  clears: ['s', 'Time at which the arc clears.'],
  current: ['A', 'Magnitude of the current when the contacts part.'],
  arcCharge: ['C', 'Integral of the magnitude of the current while the arc burns.'],
  recoveryVoltage: [
    'V',
    'R.m.s. value of the voltage between the lines of source and motor at supply frequency, once no pole conducts.',
  ],
} as const satisfies Readonly<Record<keyof BreakingDuty, Words>>;

const RISES = {
  start: ['K', 'Heat of the start over the heat capacity of the body.'],
  stop: ['K', 'The same from the stopping command to rest.'],
  operation: ['K', 'Start and stop together.'],
  reversal: ['K', 'A full reversal: from the reversing command until the machine runs the other way.'],
} as const satisfies Readonly<Record<keyof AdiabaticRises, Words>>;

const PERIODIC = {
  begin: ['K', 'Rise of each body at the beginning of the cycle, once cycle after cycle is alike.'],
  peaks: ['°C', 'Highest temperature of each body in that cycle.'],
  peakPhase: ['', 'Part of the cycle (start, running, stop, rest) in which the body is hottest.'],
} as const satisfies Readonly<Record<keyof PeriodicState, Words>>;

const PERMISSIBLE = {
  perHour: [
    '1/h',
    'Most operations per hour, evenly spaced, whose periodic steady state keeps every body below its limit.',
  ],
  binding: ['', 'Body that is at its limit then, or time: the cycle has no rest left.'],
  peaks: ['°C', 'Highest temperature of each body at that rate.'],
  remark: ['', 'Why none is permissible, or which body was not looked at.'],
} as const satisfies Readonly<Record<keyof PermissibleOperations, Words>>;

const WITHSTAND = {
  I2t: ['A²·s', 'Integral of the squared current over start and stop, in the phase with most.'],
  phase: ['', 'That phase.'],
  lockedRotorCurrent: ['A', 'R.m.s. current of the circuit at rest on a supply without impedance.'],
  cold: ['1', 'I²t over the squared locked-rotor current times the time withstood from cold.'],
  hot: ['1', 'The same with the time withstood from hot.'],
} as const satisfies Readonly<Record<keyof WithstandUse, Words>>;

const CONTACTOR = {
  contactor: ['', 'Forward or reverse contactor.'],
  role: ['', 'Driving or plugging.'],
  basis: [
    '',
    'What its lives stand on: the lives stated for it, or a generic curve; with the scatter about them.',
  ],
  breakings: [
    '',
    'Each kind of breaking: current of equal mean arc charge (A r.m.s.), recovery voltage (V), life if it were always so.',
  ],
  makings: ['', 'What bouncing costs where it makes: charge (C) and wear of one making.'],
  perEvent: ['1', 'Share of the contacts that one start, stop, plug stop, reversal or inch uses up.'],
  wearUnknown: ['', 'Something that the duty wears them by is not known.'],
  operations: [
    'operations',
    'Operations of the duty until the contacts are to be replaced, with their range.',
  ],
  operationsLeft: ['operations', 'The same less those made since the last change.'],
  replacement: ['date', 'Day on which they are used up at the stated number a day, with its range.'],
  worstPole: ['', 'Pole with most arc charge, and that charge over the mean of the poles.'],
  closingsPerOperation: ['1', 'Closings of this contactor for each operation of the duty.'],
  mechanicalOperations: ['operations', 'Operations of the duty until its mechanical life is over.'],
  recommendedCategory: ['', 'Utilisation category, AC-3 or AC-4, that its duty comes to.'],
  categoryReason: ['', 'Why.'],
  mostOperationsPerHour: ['1/h', 'Most operations per hour its maker allows in that category.'],
  missing: ['', 'What could not be found, with the reason.'],
  remarks: ['', 'What a reader must know of the figures.'],
} as const satisfies Readonly<Record<keyof ContactorWear, Words>>;

const WEAR = {
  forward: ['', 'The forward contactor, as above.'],
  reverse: ['', 'The reverse contactor, as above.'],
  governing: ['', 'The contactor whose contacts are to be replaced first.'],
  interlockOperations: [
    'operations',
    "Operations of the duty until the interlock's mechanical life is over.",
  ],
  switchOperations: [
    'operations',
    "Operations of the duty until the zero-speed switch's mechanical life is over.",
  ],
} as const satisfies Readonly<Record<keyof ContactWear, Words>>;

/** The groups in the order of the page. */
export const OTHER_QUANTITIES: readonly QuantityGroup[] = [
  {
    title: 'Energy ledger',
    intro:
      'Two balances over the whole run; every term is integrated by itself, none is a remainder. Energy in = all losses before the ' +
      'air gap + change of magnetic energy + work at the air gap; that work = changes of kinetic and twist energy + all that the ' +
      'shaft gives off.',
    rows: LEDGER,
  },
  {
    title: 'Poles: making',
    intro:
      'What one pole of a contactor does when it closes. A report shows the mean and the worst over the closing angles.',
    rows: MAKING,
  },
  { title: 'Poles: breaking', intro: 'What one pole does when it opens.', rows: BREAKING },
  {
    title: 'Heat: rises of one operation',
    intro: 'What each part of an operation would heat winding, cage and frame by if nothing flowed away.',
    rows: RISES,
  },
  {
    title: 'Heat: periodic steady state',
    intro:
      'What the cycle of the duty ends in when it repeats for ever. It is solved, not simulated for days.',
    rows: PERIODIC,
  },
  {
    title: 'Heat: permissible operations',
    intro: 'For each kind of cycle: start and coast, start and plug stop, full reversal.',
    rows: PERMISSIBLE,
  },
  {
    title: 'Heat: use of the locked-rotor withstand',
    intro: 'Start and stop together, as if nothing cooled between them.',
    rows: WITHSTAND,
  },
  { title: 'Contacts: one contactor', intro: 'Wear of its contacts in the stated duty.', rows: CONTACTOR },
  {
    title: 'Contacts: the pair',
    intro: 'Both contactors, and what wears beside their contacts.',
    rows: WEAR,
  },
  {
    title: 'Other ways to stop',
    intro: 'Each way is a simulation of its own of the same machine and load.',
    rows: ALTERNATIVE,
  },
  {
    title: 'How far it may go',
    intro: 'Answers of `suitability --extremes`.',
    rows: EXTREME,
  },
  { title: 'Plan: one starter', intro: 'A row of the table given to `plan`.', rows: STARTER },
  { title: 'Plan: one part', intro: 'One part of a starter that wears out.', rows: PART },
];
