import { type Group, minimalScenario } from './minimalScenario.ts';

const WITHOUT_CIRCUIT = {
  statorResistance: undefined,
  statorLeakage: undefined,
  magnetising: undefined,
  cages: undefined,
  inertia: undefined,
} as const;

/** Turns the smallest scenario into one whose machine is given by a nameplate. */
export function nameplateScenario(nameplate: Group, machine: Group = {}): Group {
  return minimalScenario({
    machine: { ...WITHOUT_CIRCUIT, poles: undefined, rated: undefined, nameplate, ...machine },
  });
}

/** Turns the smallest scenario into one whose machine is given by test readings. */
export function testsScenario(tests: Group, machine: Group = {}): Group {
  return minimalScenario({ machine: { ...WITHOUT_CIRCUIT, tests, ...machine } });
}

/** A nameplate whose items agree: √3 · 460 V · 10 A · 0.9 · 0.85 = 6095 W, near 6 kW. */
export const PLATE: Group = {
  power: '6 kW',
  lineVoltage: '460 V',
  frequency: '60 Hz',
  speed: '1740 rpm',
  current: '10 A',
  powerFactor: 0.85,
  efficiency: '90 %',
  lockedRotorCurrent: '6.5 times',
  lockedRotorTorque: '2.2 times',
  breakdownTorque: '280 %',
  design: 'B',
};

/**
 * Readings of a 7.5 hp motor, 208 V, 60 Hz, star. Source: S. J. Chapman, Electric Machinery Fundamentals, the example on
 * tests of induction motors (numbers as printed, from memory).
 */
export const READINGS: Group = {
  lineVoltage: '208 V',
  noLoad: { voltage: '208 V', current: ['8.12 A', '8.20 A', '8.18 A'], power: '420 W', frequency: '60 Hz' },
  lockedRotor: {
    voltage: '25 V',
    current: ['28.1 A', '28.0 A', '27.6 A'],
    power: '920 W',
    frequency: '15 Hz',
  },
  dc: { voltage: '13.6 V', current: '28 A' },
  statorLeakageShare: '50 %',
  design: 'A',
};

const supply: Group = {
  transformer: {
    rating: '630 kVA',
    impedance: '6 %',
    copperLoss: '6.5 kW',
    networkShortCircuitPower: '250 MVA',
    networkXOverR: 10,
  },
  cable: { length: '80 m', crossSection: '35 mm^2', conductor: 'copper', temperature: '70 degC' },
};

const elements: Group = {
  saturation: {
    main: [
      { voltage: '300 V', current: '9 A' },
      { voltage: '460 V', current: '20 A' },
    ],
    leakage: { stator: { current: '90 A', remaining: '60 %' }, cages: ['off'] },
  },
  ironLoss: '350 W',
  mechanicalLoss: { friction: '0.5 N m', windage: '120 W' },
  temperature: {
    resistancesAt: '20 degC',
    winding: '110 degC',
    rotor: '120 degC',
    statorConductor: 'copper',
    rotorConductor: 'aluminium',
  },
  rotorResistors: {
    turnsRatio: 1.6,
    starting: [
      { resistance: '0.8 ohm', duration: '1 s' },
      { resistance: '0.3 ohm', duration: '800 ms' },
    ],
    plugging: '1.5 ohm',
  },
};

const load: Group = {
  inertia: '120 kg m^2',
  gear: { ratio: 12.5, efficiency: '94 %', backwardEfficiency: 0.92 },
  coupling: { stiffness: '20 kN m/rad', damping: '10 N m s/rad', backlash: '0.5 deg' },
  torque: [
    { kind: 'constantPower', power: '5 kW', baseSpeed: '60 rpm' },
    {
      kind: 'table',
      points: [
        { speed: '0 rpm', torque: '80 N m' },
        { speed: '180 rpm', torque: '240 N m' },
      ],
      direction: 'opposes motion',
    },
  ],
};

const starter: Group = {
  lineResistors: {
    resistance: '0.8 ohm',
    closingTime: '25 ms',
    openingTime: '12 ms',
    bypassAfter: '500 ms',
  },
  plugConnection: 'star',
  windingOrder: 'AC',
  faults: [
    { kind: 'lost phase', phase: 'B', at: '1.2 s' },
    { kind: 'welded pole', contactor: 'forward', pole: 'A' },
    { kind: 'dead pole', contactor: 'reverse', pole: 'C' },
  ],
};

const machine: Group = { connection: 'delta', ...elements };

const control: Group = {
  starter: {
    zeroSpeedSwitch: {
      dropOutSpeed: '60 rpm',
      pickUpSpeed: '120 rpm',
      reverse: { dropOutSpeed: '70 rpm', pickUpSpeed: '140 rpm' },
      lockout: true,
      delay: '5 ms',
    },
    control: {
      scheme: 'plug to stop both directions',
      memoryRelay: true,
      readyRelay: 'yes',
      emergencyStop: { category: 1, limit: '2 s' },
      changeoverTimer: '100 ms',
      mechanicalInterlock: 'yes',
      relayTime: '12 ms',
      scanTime: '8 ms',
      coilVoltage: { pickUp: '80 %', dropOut: '55 %' },
      overload: { setting: '46.8 A', class: '10A', start: 'warm', memory: 'lost' },
    },
    faults: [
      { kind: 'welded contactor', contactor: 'forward' },
      { kind: 'zero-speed switch', mode: 'stuck closed' },
      { kind: 'auxiliary contact', contactor: 'reverse', contact: 'hold-in', stuck: 'open' },
      { kind: 'overload never trips' },
      { kind: 'supply lost', at: '1 s', until: '1.5 s' },
      { kind: 'mechanical interlock missing' },
    ],
  },
  actions: [
    { at: '0 s', do: 'press reset' },
    { at: '0.5 s', do: 'press forward', for: '0.5 s' },
    { at: '0.5 s', do: 'hold reverse' },
    { at: '1 s', do: 'release reverse' },
    { at: '2 s', do: 'press emergency stop' },
    { at: '3 s', do: 'release emergency stop' },
    { at: '4 s', do: 'trip overload' },
    { at: '5 s', do: 'reset overload' },
  ],
};

/** Every section of the judgement with every key but those that exclude each other. */
export const JUDGEMENT: Group = {
  machine: {
    cages: [
      { resistance: '0.5 ohm', leakage: '0.2 ohm' },
      { resistance: '0.3 ohm', leakage: '0.6 ohm' },
    ],
  },
  titleBlock: {
    plant: 'Seed store',
    tag: 'M-204',
    revision: 'B',
    prepared: 'J. D.',
    checked: 'R. K.',
    date: '2026-03-14',
  },
  thermal: {
    insulationClass: '155 (F)',
    ratedRise: '80 K',
    ambient: '45 degC',
    altitude: '1400 m',
    lockedRotorTimeCold: '20 s',
    lockedRotorTimeHot: '12 s',
    cageLimit: '250 degC',
    cageRatedTemperature: '140 degC',
    windingHeatCapacity: '3.2 kJ/K',
    cageHeatCapacity: '1900 J/K',
    frameHeatCapacity: '21 kJ/K',
    coolingTimeConstant: '0.6 h',
    standstillCooling: '40 %',
    outerCageShare: '45 %',
    noLoadStartsPerHour: 900,
  },
  duty: {
    cycle: 'full reversal',
    operationsPerHour: 30,
    operationsPerDay: 400,
    runningTime: '25 s',
    pluggingShare: '70 %',
    inchingShare: '10 %',
    contactsChanged: '2025-09-01',
    operationsSince: 86_000,
  },
  contactors: {
    ratedVoltage: '400 V',
    ratedCurrentAc3: '80 A',
    ratedCurrentAc4: '55 A',
    lifeAc3: 1_500_000,
    lifeAc4: 200_000,
    lifeTable: [
      { current: '80 A', operations: 1_500_000 },
      { current: '480 A', operations: 60_000 },
    ],
    mechanicalLife: 10_000_000,
    makingCapacity: '960 A',
    breakingCapacity: '800 A',
    bounceTime: '2 ms',
    operationsPerHourAc3: 1200,
    operationsPerHourAc4: 300,
    reverse: {
      ratedVoltage: '440 V',
      ratedCurrentAc3: '95 A',
      ratedCurrentAc4: '65 A',
      lifeAc3: 1_200_000,
      lifeAc4: 150_000,
      lifeTable: [
        { current: '95 A', operations: 1_200_000 },
        { current: '570 A', operations: 50_000 },
      ],
      mechanicalLife: 8_000_000,
      makingCapacity: '1.14 kA',
      breakingCapacity: '950 A',
      bounceTime: '3 ms',
      operationsPerHourAc3: 1000,
      operationsPerHourAc4: 250,
    },
    interlockMechanicalLife: 5_000_000,
    switchMechanicalLife: 3_000_000,
  },
  limits: {
    instantaneousTrip: '800 A',
    voltageDip: '12 %',
    couplingTorque: '900 N m',
    gearboxTorque: 'none',
    keyTorque: '950 N m',
    brakeTorque: 'none',
    deceleration: '0.3 g0',
    decelerationRadius: '160 mm',
    tippingRatio: 2.4,
    slidingFriction: 'none',
    reverseCreep: '90 deg',
    deadTimeMargin: '5 ms',
    stopTime: '1.2 s',
    stopAngle: '15 rev',
    contactLife: 150_000,
  },
  protection: {
    overload: { setting: '62 A', class: '10A' },
    curves: [
      {
        name: 'main fuse',
        kind: 'fuse',
        points: [
          { current: '250 A', time: '600 s' },
          { current: '1.2 kA', time: '0.4 s' },
        ],
      },
    ],
  },
  alternatives: {
    mechanicalBrake: { torque: '300 N m', delay: '60 ms' },
    injectionCurrent: '120 A',
    injectionDelay: '500 ms',
    lineResistance: '1.2 ohm',
    deadTime: '400 ms',
  },
};

/** Scenarios that hold every key of the elements between them, for the schema and the parser alike. */
export const WITH_EVERY_KEY: readonly (readonly [string, Group])[] = [
  ['a circuit with every element', minimalScenario({ supply, load, starter, machine })],
  ['a control circuit with everything', minimalScenario(control)],
  [
    'a control circuit with little',
    minimalScenario({
      machine: { rated: { current: '46.8 A' } },
      starter: {
        control: { scheme: 'reversing directly', coilVoltage: 'ignored', overload: { class: 20 } },
        faults: [{ kind: 'supply lost', at: '1 s' }],
      },
      actions: [{ at: '0 s', do: 'press forward' }],
    }),
  ],
  ['every section of the judgement', minimalScenario(JUDGEMENT)],
  [
    'sections of the judgement with little',
    minimalScenario({
      machine: { rated: { current: '46.8 A' } },
      titleBlock: {},
      thermal: { insulationClass: 130 },
      duty: { cyclicDurationFactor: '40 %' },
      contactors: { ratedCurrentAc3: '80 A', reverse: { bounceTime: '3 ms' } },
      limits: { voltageDip: 'none', stopTime: 'none', contactLife: 'none' },
      protection: { overload: { class: 10 } },
      alternatives: {},
    }),
  ],
  ['a nameplate', nameplateScenario(PLATE)],
  [
    'a nameplate with typical saturation',
    nameplateScenario(PLATE, { saturation: { main: 'typical', leakage: 'typical' } }),
  ],
  ['tests', testsScenario(READINGS)],
  [
    'values in other spellings',
    minimalScenario({
      supply: {
        transformer: { rating: '500 kVA', impedance: 0.05, xOverR: 4 },
        cable: { length: '260 ft', resistance: '0.16 ohm/kft', reactance: '0.08 ohm/km' },
      },
      machine: {
        ironLoss: { resistance: '900 ohm', inductance: '90 ohm' },
        mechanicalLoss: '200 W',
        saturation: {
          main: [
            { flux: '0.5 Wb', magnetisingCurrent: '15 A' },
            { flux: '0.9 Wb', magnetisingCurrent: '32 A' },
          ],
          leakage: 'off',
        },
      },
      starter: { lineResistors: { resistance: '1 ohm', bypassAfter: 'never' } },
      load: {
        torque: {
          kind: 'table',
          points: [
            { speed: '-2200 rpm', torque: '30 N m' },
            { speed: '2200 rpm', torque: '60 lbf ft' },
          ],
          direction: 'as given',
        },
      },
    }),
  ],
];
