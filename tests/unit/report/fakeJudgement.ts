import { CRITERION_KEYS, type Criterion, type CriterionKey } from '../../../src/assess/criterion.ts';
import type { HeatPulse } from '../../../src/assess/heat/heat.ts';
import type { Heating } from '../../../src/assess/heat/heating.ts';
import type { TimeCurrentData } from '../../../src/assess/protection/timeCurrent.ts';
import type { BreakingWear, ContactorWear } from '../../../src/assess/wear/contactWearTypes.ts';
import type { JudgedRun } from '../../../src/report/judgedRun.ts';
import type { TitleBlock } from '../../../src/scenario/scenario.ts';
import type { Alternative } from '../../../src/survey/alternatives/alternative.ts';
import type { Extreme } from '../../../src/survey/inverse/extreme.ts';
import { fakeRun, fakeScenario } from './fakeRun.ts';

/**
 * A judgement made by hand, with one case of everything the note can say, so that it can be tested without judging anything. The
 * numbers mean nothing; no test reads physics from them.
 */
export function fakeJudgement(changes: Partial<JudgedRun> = {}): JudgedRun {
  const result = fakeRun();
  return {
    result: { ...result, scenario: { ...result.scenario, titleBlock: TITLE_BLOCK } },
    suitability: {
      verdict: {
        outcome: 'notSuitable',
        sentence: 'Plugging is not suitable by these criteria: cage temperature exceeds its limit by 12 %.',
        decisive: ['cageTemperature'],
        leftOpen: ['voltageDip'],
        reservations: ['One closing angle.'],
      },
      criteria: CRITERIA,
      heating: HEATING,
      wear: {
        forward: contactor('forward'),
        reverse: contactor('reverse'),
        governing: 'reverse',
        interlockOperations: 4e6,
        switchOperations: null,
      },
      timeCurrent: TIME_CURRENT,
      consequences: {
        coast: { outcome: 'rest', from: 187, to: 0, time: 12, angle: 1000 },
        standstill: { pull: 0, friction: 30, brake: 0, brakeIdle: false },
        reverseSpeed: -187,
        sentences: ['If the supply fails the shaft coasts for 12 s.'],
      },
    },
    alternatives: ALTERNATIVES,
    extremes: EXTREMES,
    ...changes,
  };
}

export const TITLE_BLOCK: TitleBlock = {
  plant: 'Foundry 2',
  tag: 'M-17',
  revision: 'C',
  prepared: 'P. P.',
  checked: null,
  date: '2026-03-14',
};

/** A criterion with something different. */
export function criterion(key: CriterionKey, changes: Partial<Criterion> = {}): Criterion {
  return {
    key,
    name: `name of ${key}`,
    value: 1,
    unit: '1',
    limit: 2,
    limitIs: 'most',
    margin: 0.5,
    source: 'NEMA MG 1 (from memory)',
    outcome: 'pass',
    remark: '',
    required: true,
    ...changes,
  };
}

const SPECIAL: Partial<Record<CriterionKey, Partial<Criterion>>> = {
  windingTemperature: { value: 100, limit: 145, unit: '°C', margin: 0.31, remark: 'with values assumed' },
  cageTemperature: { value: 336, limit: 300, unit: '°C', margin: -0.12, outcome: 'fail' },
  makingCapacity: { value: 190, limit: 200, unit: 'A', margin: 0.05, outcome: 'close' },
  contactLife: { value: 183000, limit: 150000, unit: 'operations', limitIs: 'least', margin: 0.22 },
  voltageDip: {
    value: null,
    limit: 0.12,
    margin: null,
    outcome: 'notJudged',
    remark: 'not judged because the short-circuit power is missing',
    required: false,
  },
  sliding: {
    value: null,
    limit: null,
    margin: null,
    source: 'the scenario states that no limit applies',
    required: false,
  },
  tipping: {
    value: null,
    limit: null,
    margin: null,
    source: 'does not apply',
    remark: 'nothing stands on the load',
    required: false,
  },
};

const CRITERIA: readonly Criterion[] = CRITERION_KEYS.map((key) => criterion(key, SPECIAL[key]));

const PULSE: HeatPulse = { winding: 1000, cage: 2000, outerCage: 0, frame: 0, duration: 0.5 };
const USE = { operations: 5, steadyPeak: 3 };

export const HEATING: Heating = {
  kind: 'startPlugStop',
  heat: { start: PULSE, running: PULSE, stop: PULSE },
  cageRule: 'Both cages are one body.',
  model: {
    nodes: [
      { name: 'winding', heatCapacity: 1000, ratedRise: 80, limit: 145, limitSource: 'class 155' },
      { name: 'cage', heatCapacity: 500, ratedRise: 100, limit: null, limitSource: 'its limit is missing' },
      { name: 'frame', heatCapacity: 20000, ratedRise: 40, limit: null, limitSource: '' },
    ],
    links: [],
    ambient: 40,
    parameters: [
      {
        name: 'slowest time constant',
        value: 1800,
        unit: 's',
        origin: 'assumed',
        source: 'half an hour (common practice, no source)',
      },
    ],
  },
  rises: { start: [1, 2, 0], stop: [3, 4, 0], operation: [10, 20, 0], reversal: [5, 6, 0] },
  dutyType: {
    type: 'S5',
    words: 'intermittent periodic duty with electric braking',
    cyclicDurationFactor: 0.4,
    motorInertia: 1,
    loadInertia: 1.4,
    factorOfInertia: 2.4,
    designation: 'S5, 40 %, FI 2.4',
  },
  permissible: {
    startCoast: { perHour: 140, binding: 'time', peaks: [80, 84, 58], remark: '' },
    startPlugStop: { perHour: 70, binding: 'winding', peaks: [145, 150, 90], remark: '' },
    fullReversal: 'the run shows no reversal',
  },
  fromNoLoadStarts: { perHour: 50, rule: 'Heat per hour is shared.', governs: true },
  atDuty: { begin: [10, 10, 10], peaks: [100, 120, 60], peakPhase: ['stop', 'stop', 'running'] },
  inSuccession: { cold: 40, warm: Number.POSITIVE_INFINITY },
  withstand: {
    I2t: 2604,
    phase: 'C',
    lockedRotorCurrent: 400,
    cold: null,
    hot: {
      share: 0.033,
      time: { name: 'from hot', value: 12, unit: 's', origin: 'standard', source: 'NEMA MG 1' },
    },
  },
  relay: {
    setting: 62,
    tripClass: '10',
    withoutPause: { cold: { operations: 29, steadyPeak: 3 }, warm: USE },
    atDuty: {
      cold: { operations: Number.POSITIVE_INFINITY, steadyPeak: 0.2 },
      warm: { operations: Number.POSITIVE_INFINITY, steadyPeak: 0.2 },
    },
  },
};

const BREAKING: BreakingWear = {
  occasion: 'plugging',
  current: 97.4,
  recoveryVoltage: 400,
  category: 'AC-4-like',
  life: { operations: 128000, low: 64000, high: 256000, generic: true, origin: 'generic', remark: '' },
  origin: 'simulated',
  arcCharges: { A: 0.39, B: 0.24, C: 0.57 },
};

function contactor(name: 'forward' | 'reverse'): ContactorWear {
  return {
    contactor: name,
    role: name === 'forward' ? 'driving' : 'plugging',
    basis: { generic: true, lowFactor: 0.25, highFactor: 4, origin: 'generic curve, not this device' },
    breakings: [BREAKING],
    makings: {
      plugging: {
        bounceCharge: null,
        contained: null,
        wear: null,
        remark: 'make erosion is not judged because the bounce time is missing',
      },
    },
    perEvent: { start: null, stop: null, plugStop: null, reversal: null, inch: null },
    wearUnknown: false,
    operations: { value: 183000, low: 63700, high: 366000 },
    operationsLeft: null,
    replacement: { value: '2026-12-02', low: '2026-02-07', high: null },
    worstPole: { phase: 'C', factor: 1.44 },
    closingsPerOperation: 1,
    mechanicalOperations: null,
    recommendedCategory: 'AC-4',
    categoryReason: 'its hardest breaking is AC-4-like',
    mostOperationsPerHour: null,
    missing: ['the breaking when inching'],
    remarks: ['a remark on the life'],
  };
}

const OPERATION = {
  phase: 'C',
  duration: 0.14,
  perPeriod: [
    { time: 0.02, current: 170 },
    { time: 0.14, current: 40 },
  ],
  equivalent: [
    { time: 0.02, current: 170 },
    { time: 0.14, current: 99 },
  ],
} as const;

export const TIME_CURRENT: TimeCurrentData = {
  start: null,
  plug: OPERATION,
  overload: {
    setting: 62,
    tripClass: '10',
    cold: [
      { time: 300, current: 80 },
      { time: 9, current: 400 },
      { time: 4, current: 900 },
    ],
    warm: [
      { time: 200, current: 80 },
      { time: 2, current: 400 },
      { time: 1, current: 900 },
    ],
  },
  lockedRotor: {
    current: 400,
    cold: [
      { time: 80, current: 200 },
      { time: 5, current: 800 },
    ],
    hot: null,
  },
  curves: [
    {
      name: 'main fuse',
      kind: 'fuse',
      points: [
        { current: 250, time: 600 },
        { current: 1200, time: 0.4 },
      ],
    },
  ],
  instantaneousTrip: 1000,
};

const NO_COST = { operationsPerHour: null, binding: null, contactLife: null, wearsFirst: null } as const;

const ALTERNATIVES: readonly Alternative[] = [
  {
    name: 'plug',
    setting: '',
    chosen: null,
    remark: 'nothing holds the load',
    figures: {
      command: 1.49,
      time: 0.49,
      reachesZero: true,
      angle: 8 * Math.PI,
      peakCurrent: 1402,
      peakTorque: 900,
      couplingTorque: null,
      statorHeat: 1000,
      rotorHeat: 2000,
      lineResistorHeat: 0,
    },
    cost: { operationsPerHour: 70, binding: 'time', contactLife: 128000, wearsFirst: 'reverse' },
    reversalTime: null,
    result: fakeRun(),
    missing: null,
  },
  {
    name: 'mechanicalBrake',
    setting: '',
    chosen: null,
    remark: '',
    figures: null,
    cost: NO_COST,
    reversalTime: null,
    result: null,
    missing: 'the torque of a brake is missing',
  },
];

const EXTREMES: readonly Extreme[] = [
  {
    name: 'largestInertia',
    unit: 'kg·m²',
    present: 1,
    boundary: { kind: 'found', value: 2, beyond: 2.02, binding: ['temperature of the cage'], trials: 12 },
    missing: null,
    remark: '',
  },
  {
    name: 'mostOperations',
    unit: '1/h',
    present: null,
    boundary: null,
    missing: 'the duty is missing',
    remark: '',
  },
  {
    name: 'shortestDeadTime',
    unit: 's',
    present: 0.03,
    boundary: { kind: 'nothing', value: null, beyond: 0.002, binding: ['dead-time margin'], trials: 9 },
    missing: null,
    remark: 'arcs overlap',
  },
];

/** The same judgement with a text wherever a person's words may stand. */
export function fakeJudgementOf(text: string): JudgedRun {
  const judged = fakeJudgement();
  const titleBlock = { plant: text, tag: text, revision: text, prepared: text, checked: text, date: text };
  const { suitability } = judged;
  const curves = TIME_CURRENT.curves.map((curve) => ({ ...curve, name: text }));
  return {
    ...judged,
    result: { ...judged.result, scenario: { ...fakeScenario(text), description: text, titleBlock } },
    suitability: {
      ...suitability,
      criteria: suitability.criteria.map((one) => ({ ...one, source: text, remark: text })),
      timeCurrent: { ...TIME_CURRENT, curves },
    },
    alternatives: judged.alternatives.map((way) => ({ ...way, setting: text, remark: text })),
  };
}
