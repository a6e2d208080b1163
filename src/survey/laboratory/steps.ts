import type { StepKey } from './laboratory.ts';
import type { QuantityKey } from './quantities.ts';

/** A step before its readings are predicted. */
export interface StepPlan {
  readonly key: StepKey;
  readonly title: string;
  readonly cautions: readonly string[];
  readonly doing: readonly string[];
  readonly reads: readonly QuantityKey[];
}

/** Repetitions of what the closing instant decides: nobody controls it, so that one reading says little. */
export const REPEATS = 10;

/** Run-downs, of which the mean is taken. */
export const RUN_DOWNS = 3;

/** Quantities that are read on each repetition. */
export const REPEATED: readonly QuantityKey[] = [
  'plugPeakCurrent',
  'stopTimeFromTouch',
  'stopRevolutions',
  'partingToTouch',
];

/** The procedure: from what needs no turning shaft to what stresses the set most. */
export const STEP_PLANS: readonly StepPlan[] = [
  {
    key: 'resistance',
    title: 'Winding resistance, cold',
    cautions: ['Supply switched off, locked and proved dead before the terminal box is opened.'],
    doing: [
      'Do this first, after the set has stood long enough for its winding to be as warm as the room. Write down the temperature of the room.',
      'Measure between each pair of terminals, with the leads of the supply disconnected, and take the mean.',
      'The prediction holds at the temperature for which the scenario states its resistances; copper changes by 0.39 % per kelvin (about 20 °C).',
    ],
    reads: ['terminalResistance'],
  },
  {
    key: 'direction',
    title: 'Order of the phases, direction, zero-speed switch',
    cautions: [
      'Guard closed, nobody near the flywheel. Try the emergency stop before anything else.',
      'Leads are exchanged only with the supply switched off, locked and proved dead.',
    ],
    doing: [
      'Start and stop at once: the shaft must turn as the arrow on the guard shows. If not, exchange two leads of the supply.',
      'See that the other contactor turns the shaft the other way, from standstill.',
      'Let the set run down from a short start: a lamp or a meter on the contact of the zero-speed switch must show that it closes and opens again.',
    ],
    reads: [],
  },
  {
    key: 'noLoad',
    title: 'Running light',
    cautions: [],
    doing: [
      'Run the set until the bearings are warm and the power no longer falls.',
      'Read current, power and speed at rated voltage. Write down the voltage.',
    ],
    reads: ['noLoadCurrent', 'noLoadPower', 'noLoadSpeed'],
  },
  {
    key: 'lockedRotor',
    title: 'Rotor locked, reduced voltage',
    cautions: [
      'Only with the mechanical clamp in place and checked by the instructor; never by hand, and never with the flywheel as the lever.',
      'Reduced voltage only, beginning at zero. Seconds, not minutes: the fan stands still. Take the clamp off before the supply is made ready again.',
    ],
    doing: [
      'With the rotor clamped, raise the voltage slowly from zero until the mean of the three currents is the rated one.',
      'Read voltage and power together, then switch off at once.',
    ],
    reads: ['lockedRotorVoltage', 'lockedRotorPower'],
  },
  {
    key: 'runDown',
    title: 'Run-down: friction and inertia',
    cautions: [
      'The flywheel turns long after the contactor has opened: the guard stays closed until it stands.',
    ],
    doing: [
      'Bring the set to its running speed, warm. Open the contactor without plugging.',
      `Take the time to half speed and the time to rest. ${RUN_DOWNS} runs, mean of the ${RUN_DOWNS}.`,
    ],
    reads: ['runDownTime', 'halfSpeedTime'],
  },
  {
    key: 'start',
    title: 'Direct start',
    cautions: ['Guard closed, everybody away from the shaft. One person gives the word, one presses.'],
    doing: [
      'Start from standstill and record the currents of all three lines and the speed.',
      'Read run-up time, largest r.m.s. value over one period and largest crest. Keep the pause before the next start.',
    ],
    reads: ['startTime', 'startWorstCycleCurrent', 'startPeakCurrent'],
  },
  {
    key: 'plugStop',
    title: 'Plug stop, ten times',
    cautions: [
      'Many plug stops heat winding and rotor, where no thermometer is: keep the pause of this sheet, and end the experiment at any smell of hot insulation.',
      'The zero-speed switch is not a protective device. If it fails to open, the set runs up backwards: one hand stays at the emergency stop. It takes the supply away and does not brake: the flywheel turns on as long as in the run-down.',
    ],
    doing: [
      'Start, let the set run until it is at its running speed, then plug. Record currents and speed.',
      `Do it ${REPEATS} times without changing anything. How the readings scatter is what the experiment is about.`,
      'Mark the lowest and the highest crest. They should lie about as far apart as predicted; where they lie may shift within the range that is in order.',
    ],
    reads: ['plugPeakCurrent', 'stopTimeFromTouch', 'stopRevolutions', 'partingToTouch'],
  },
  {
    key: 'creep',
    title: 'What turns back if the zero-speed switch opens late',
    cautions: [
      'A delay is set by the instructor, with the supply off. The flywheel turns backwards on its own.',
    ],
    doing: [
      'See whether, and how far, the flywheel turns backwards after zero speed with the switch as it is set.',
      'Where a delay relay is fitted, set the delays of the table one after another and compare.',
    ],
    reads: ['creepAngle'],
  },
  {
    key: 'reversal',
    title: 'Full reversal',
    cautions: [
      'The hardest trial on rotor and contactors: one or two runs, with the longer pause.',
      'The set runs on the other way: it is let run down, not plugged again.',
    ],
    doing: [
      'From the running speed press the opposite button, so that the set brakes and runs up the other way. Record currents and speed.',
      'Read the time to 95 % of the running speed. The crest is that of a plug stop.',
    ],
    reads: ['reversalTime'],
  },
];

/** What is said beside the doing of a step where the load pulls one way, as a weight does, and friction holds it. */
export const WEIGHT_TOO: Partial<Readonly<Record<StepKey, readonly string[]>>> = {
  runDown: ['What is timed is friction and weight together; in the other direction the times are others.'],
};

/** What is worked out afterwards, in order. */
export const EVALUATED: readonly QuantityKey[] = [
  'noLoadReactance',
  'shortCircuitResistance',
  'shortCircuitReactance',
  'meanFriction',
  'stopToStartTime',
  'reversalToStartTime',
  'startHeatMultiple',
  'plugHeatMultiple',
  'reversalHeatMultiple',
];
