import type { PlanColumnName } from './planColumns.ts';

/** What a column of the table of starters says. */
export interface ColumnWords {
  /** What its cells mean, a sentence or more. */
  readonly meaning: string;
  /** `needed`, with the columns that may stand for it or that demand it; else what holds where the cell is empty. */
  readonly leftOut: string;
}

const NEEDED = 'needed';
const BY_NAMEPLATE = 'by design letter, or typical';
const NOT_COUNTED = 'this part is not counted';
const READING = 'needed with inspected, unless another reading is stated';
const THICKNESS = 'needed with contact thickness now';
const TRAVEL = 'needed with over-travel now';

/** Words for every column; the compiler names one that is missing. */
export const PLAN_COLUMN_WORDS: Readonly<Record<PlanColumnName, ColumnWords>> = {
  tag: { meaning: 'Name of the starter, each once.', leftOut: NEEDED },
  description: { meaning: 'What it drives, for the reader of the plan.', leftOut: 'none' },
  power: { meaning: 'Rated power of the motor.', leftOut: NEEDED },
  voltage: {
    meaning: 'Rated voltage of the motor, line to line; the supply is taken to have it.',
    leftOut: NEEDED,
  },
  frequency: { meaning: 'Rated frequency of the motor; the supply is taken to have it.', leftOut: NEEDED },
  speed: { meaning: 'Rated speed of the motor.', leftOut: 'needed, or poles' },
  poles: { meaning: 'Number of poles of the motor.', leftOut: 'needed, or speed' },
  'rated current': { meaning: 'Rated current of the motor.', leftOut: 'estimated from the nameplate' },
  'power factor': { meaning: 'At rated output.', leftOut: 'estimated from the nameplate' },
  efficiency: { meaning: 'At rated output.', leftOut: 'estimated from the nameplate' },
  'locked-rotor current': {
    meaning: 'Current with the rotor held, at rated voltage.',
    leftOut: `by code letter, else ${BY_NAMEPLATE}`,
  },
  'code letter': {
    meaning: 'Code letter of NEMA MG 1 for the locked-rotor apparent power.',
    leftOut: 'by locked-rotor current',
  },
  'locked-rotor torque': {
    meaning: 'Torque with the rotor held, of rated torque.',
    leftOut: BY_NAMEPLATE,
  },
  'breakdown torque': { meaning: 'Greatest torque, of rated torque.', leftOut: BY_NAMEPLATE },
  design: { meaning: 'Design letter of NEMA MG 1 or IEC 60034-12.', leftOut: 'typical values' },
  'rotor inertia': { meaning: 'Moment of inertia of the rotor.', leftOut: 'estimated from power and poles' },
  'load inertia': {
    meaning: 'Moment of inertia of the load, at the motor shaft.',
    leftOut: 'the inertia that the standard demands a motor can start; the dates may move either way',
  },
  'load kind': {
    meaning: 'How the torque of the load goes with the speed.',
    leftOut: 'needed with load torque; without both, friction of 5 % of rated torque',
  },
  'load torque': {
    meaning: 'At the motor shaft; of a fan at rated speed; below 0 only of gravity that drives.',
    leftOut: 'needed with load kind, unless that is none',
  },
  'contactor current AC-3': {
    meaning: 'Rated operational current of each contactor in utilisation category AC-3.',
    leftOut: NEEDED,
  },
  'contactor current AC-4': {
    meaning: 'The same in AC-4, at which its life in AC-4 holds.',
    leftOut: 'the current in AC-3 stands for it',
  },
  'life AC-3': {
    meaning: 'Electrical life of the contacts in AC-3, operations.',
    leftOut: 'from the life in AC-4; without both, a generic curve',
  },
  'life AC-4': {
    meaning: 'Electrical life of the contacts in AC-4, operations.',
    leftOut: 'from the life in AC-3; without both, a generic curve',
  },
  'contactor mechanical life': {
    meaning: 'Operations without current that a contactor lasts.',
    leftOut: NOT_COUNTED,
  },
  'interlock mechanical life': {
    meaning: 'Movements that the mechanical interlock lasts.',
    leftOut: NOT_COUNTED,
  },
  'switch mechanical life': { meaning: 'Operations that the zero-speed switch lasts.', leftOut: NOT_COUNTED },
  'stop by': { meaning: 'How it is stopped in normal service.', leftOut: 'needed, or share of plugging' },
  'share of plugging': {
    meaning: 'Share of all operations that are stopped by plugging.',
    leftOut: 'by stop by: all but inching, or none',
  },
  'share of inching': { meaning: 'Share of all operations that are inching.', leftOut: '0 %' },
  'operations per day': {
    meaning:
      'Starts with their stops, and inchings, per calendar day on average; holds from the counter date on.',
    leftOut: 'needed, or counter, counter date and contacts changed',
  },
  counter: {
    meaning:
      'Operations since the last change of contacts. A counter that has run since the contactors were new shows more: write its reading less that on the day of the change.',
    leftOut: 'needed with counter date; without both, operations per day since contacts changed',
  },
  'counter date': { meaning: 'Day on which the counter was read.', leftOut: 'needed with counter' },
  'operations since new': {
    meaning:
      'Operations since the contactors were new, for the mechanical lives: on the counter date, or, without a counter, on the day the contacts were changed. Here belongs what a counter shows that is never set back.',
    leftOut: 'mechanical lives count from the last change of contacts',
  },
  'contacts changed': {
    meaning: 'Day of the last change of contacts, or of putting into service.',
    leftOut: 'needed, or a counter with its date, or an inspection',
  },
  inspected: { meaning: 'Day of the last inspection of the contacts.', leftOut: 'needed with a reading' },
  'contact worn': {
    meaning: 'Reading: share of the wear allowance that is used up, 0 as new, 100 % at the limit.',
    leftOut: READING,
  },
  'contact thickness new': { meaning: 'Thickness of a contact when new.', leftOut: THICKNESS },
  'contact thickness now': { meaning: 'Reading: thickness at the inspection.', leftOut: READING },
  'contact thickness limit': {
    meaning: 'Thickness at which the maker has contacts changed.',
    leftOut: THICKNESS,
  },
  'over-travel new': { meaning: 'Over-travel of the contacts when new.', leftOut: TRAVEL },
  'over-travel now': {
    meaning: 'Reading: over-travel at the inspection, of the contacts that are worn more.',
    leftOut: READING,
  },
  'over-travel limit': {
    meaning: 'Over-travel at which the maker has contacts changed.',
    leftOut: TRAVEL,
  },
  'spare kit': {
    meaning: 'Name of the kit of contacts kept for it; spares are counted by it.',
    leftOut: 'counted as contacts without a name',
  },
};
