import type { FileAlternative, FileExtreme } from '../../../src/report/suitabilityFile.ts';
import type { PlannedPart, PlannedStarter } from '../../../src/survey/plan/plan.ts';
import type { Words } from './otherQuantities.ts';

/** One part of a starter in a plan. */
export const PART = {
  part: ['', 'Contacts, contactor, interlock or zero-speed switch.'],
  words: ['', 'The same in words, with the contactor it belongs to.'],
  expected: ['date', 'Day on which the part is used up with every assumption in the middle.'],
  earliest: ['date', 'The same with every assumption at its unfavourable end at once.'],
  latest: ['date', 'The same with every assumption at its favourable end at once.'],
  life: ['operations', 'Operations of the starter that a new part lasts.'],
  lifeOrigin: ['', 'Where that life comes from.'],
  used: ['1', 'Share of that life used up on the day of the plan.'],
  effects: ['', 'What moves the day, in falling order: the assumption that matters most stands first.'],
} as const satisfies Readonly<Record<keyof PlannedPart, Words>>;

/** One starter in a plan. */
export const STARTER = {
  tag: ['', 'Name of the starter in the table.'],
  description: ['', 'What it drives, as the table says.'],
  spareKit: ['', 'Kit of contacts kept for it.'],
  motorPower: ['W', 'Rated power of the motor.'],
  parts: ['', 'Every part whose life is known, by expected day; the first governs.'],
  expected: ['date', 'Expected day of the part that governs.'],
  earliest: ['date', 'First of the earliest days of all parts: nothing is due before.'],
  latest: ['date', 'First of the latest days of all parts: by then one is due.'],
  operationsPerDay: ['1/d', 'Operations a day, stated or from counter and dates.'],
  pluggingShare: ['1', 'Share of all operations that are stopped by plugging.'],
  inspection: ['', 'The inspection of the contacts and what it changed.'],
  doubts: ['', 'What the row states twice and differently: counter and operations per day.'],
  remarks: ['', 'What was taken for what is not stated, and what is not counted.'],
} as const satisfies Readonly<Record<keyof PlannedStarter, Words>>;

/** One way to stop. */
export const ALTERNATIVE = {
  name: ['', 'Way to stop.'],
  setting: ['', 'What was set for it.'],
  chosen: ['', 'Resistor per line (Ω), direct current (A) or dead time (s) that was set.'],
  remark: ['', 'What a reader must know of this way.'],
  time: [
    's',
    'From the command to zero speed, or where friction leaves that open to 1 % of synchronous speed.',
  ],
  angle: ['rad', 'Turned meanwhile by the motor shaft.'],
  peakCurrent: [
    'A',
    'Largest phase current once the running current has been interrupted; 0 where none flows.',
  ],
  peakTorque: [
    'N·m',
    "Air-gap torque of largest magnitude from then on, or the brake's where that is larger.",
  ],
  couplingTorque: ['N·m', 'Torque of largest magnitude in an elastic coupling from the command on.'],
  rotorHeat: ['J', 'Heat in the cages from the command to the next one or the end of the run.'],
  statorHeat: ['J', 'Heat in the stator winding meanwhile.'],
  operationsPerHour: [
    '1/h',
    "Most operations per hour (start, running, this stop) that the motor's temperatures and the time allow.",
  ],
  binding: [
    '',
    'Body of the motor that is at its limit then, or time: the cycle has no rest left. A report marks the number with `*`.',
  ],
  contactLife: ['operations', 'Operations of this kind until the contacts that wear first are worn.'],
  wearsFirst: ['', 'The contactor they belong to.'],
  reversalTime: ['s', 'From the command to 95 % of the steady speed the other way.'],
  missing: ['', 'Why it was not compared.'],
} as const satisfies Readonly<Record<keyof FileAlternative, Words>>;

/** One answer of how far a quantity may go. */
export const EXTREME = {
  name: ['', 'Quantity that is changed, everything else as it is.'],
  unit: ['', 'Its unit.'],
  present: ['', "The scenario's own value."],
  kind: ['', 'found: a boundary; everything: all values tried pass; nothing: none does.'],
  value: ['', 'The last value that passes.'],
  binding: ['', 'Criteria that fail beyond it.'],
  missing: ['', 'Why the question was not answered.'],
  remark: ['', 'What a reader must know.'],
} as const satisfies Readonly<Record<keyof FileExtreme, Words>>;
