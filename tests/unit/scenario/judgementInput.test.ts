import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readScenario } from '../../../src/scenario/readScenario.ts';
import type { Scenario } from '../../../src/scenario/scenario.ts';
import { scenarioToYaml } from '../../../src/scenario/scenarioToYaml.ts';
import { expectWithin } from '../../support/tolerance.ts';
import { JUDGEMENT } from './everyKey.ts';
import { type Group, minimalScenario, parseScenario } from './minimalScenario.ts';
import { stubEstimator } from './stubEstimator.ts';

const SECTIONS = [
  'titleBlock',
  'thermal',
  'duty',
  'contactors',
  'limits',
  'protection',
  'alternatives',
] as const;

const sectionsOf = (changes: Group) => parseScenario(minimalScenario(changes));

/** A few roundings: one multiplication by the factor of the unit, itself rounded. */
const ROUNDED = { relative: 4 * Number.EPSILON };

const AC3 = { ratedCurrentAc3: '80 A' };
const RADIUS = { decelerationRadius: '160 mm' };

/** Key by key what is written, beside what must stand there, and its value in SI by hand. */
const QUANTITIES: readonly (readonly [string, string, Group, number])[] = [
  ['thermal', 'ratedRise', { ratedRise: '80 K' }, 80],
  ['thermal', 'ambient', { ambient: '104 degF' }, 40],
  ['thermal', 'altitude', { altitude: '1.4 km' }, 1400],
  ['thermal', 'lockedRotorTimeCold', { lockedRotorTimeCold: '20 s' }, 20],
  ['thermal', 'lockedRotorTimeHot', { lockedRotorTimeHot: '12000 ms' }, 12],
  ['thermal', 'cageLimit', { cageLimit: '523.15 K' }, 250],
  ['thermal', 'cageRatedTemperature', { cageRatedTemperature: '140 degC' }, 140],
  ['thermal', 'windingHeatCapacity', { windingHeatCapacity: '3.2 kJ/K' }, 3200],
  ['thermal', 'cageHeatCapacity', { cageHeatCapacity: '1900 J/K' }, 1900],
  ['thermal', 'frameHeatCapacity', { frameHeatCapacity: '0.021 MJ/K' }, 21_000],
  ['thermal', 'coolingTimeConstant', { coolingTimeConstant: '0.6 h' }, 2160],
  ['thermal', 'standstillCooling', { standstillCooling: '40 %' }, 0.4],
  ['thermal', 'standstillCooling', { standstillCooling: 0 }, 0],
  ['thermal', 'noLoadStartsPerHour', { noLoadStartsPerHour: 900 }, 900],
  ['duty', 'operationsPerHour', { operationsPerHour: 0.5 }, 0.5],
  ['duty', 'operationsPerDay', { operationsPerDay: 400 }, 400],
  ['duty', 'runningTime', { runningTime: '2 min' }, 120],
  ['duty', 'cyclicDurationFactor', { cyclicDurationFactor: '40 %' }, 0.4],
  ['duty', 'pluggingShare', { pluggingShare: '70 %' }, 0.7],
  ['duty', 'inchingShare', { inchingShare: 0.1 }, 0.1],
  ['duty', 'operationsSince', { operationsSince: 86_000 }, 86_000],
  ['contactors', 'interlockMechanicalLife', { ...AC3, interlockMechanicalLife: 5e6 }, 5_000_000],
  ['contactors', 'switchMechanicalLife', { ...AC3, switchMechanicalLife: 3e6 }, 3_000_000],
  ['limits', 'instantaneousTrip', { instantaneousTrip: '0.8 kA' }, 800],
  ['limits', 'voltageDip', { voltageDip: '12 %' }, 0.12],
  ['limits', 'couplingTorque', { couplingTorque: '0.9 kN m' }, 900],
  ['limits', 'gearboxTorque', { gearboxTorque: '240 N m' }, 240],
  // Pound 0.45359237 kg, foot 0.3048 m, standard gravity 9.80665 m/s²: one lbf·ft is 1.3558179483314004 N·m.
  ['limits', 'keyTorque', { keyTorque: '100 lbf ft' }, 135.58179483314004],
  ['limits', 'brakeTorque', { brakeTorque: '150 N m' }, 150],
  ['limits', 'deceleration', { ...RADIUS, deceleration: '0.3 g0' }, 2.941995],
  ['limits', 'deceleration', { ...RADIUS, deceleration: '2.5 m/s^2' }, 2.5],
  ['limits', 'decelerationRadius', RADIUS, 0.16],
  ['limits', 'tippingRatio', { ...RADIUS, tippingRatio: 2.4 }, 2.4],
  ['limits', 'slidingFriction', { ...RADIUS, slidingFriction: 0.35 }, 0.35],
  ['limits', 'reverseCreep', { reverseCreep: '90 deg' }, Math.PI / 2],
  ['limits', 'reverseCreep', { reverseCreep: '0 rev' }, 0],
  ['limits', 'deadTimeMargin', { deadTimeMargin: '5 ms' }, 0.005],
  ['limits', 'stopTime', { stopTime: '1200 ms' }, 1.2],
  ['limits', 'stopAngle', { stopAngle: '15 rev' }, 30 * Math.PI],
  ['limits', 'contactLife', { contactLife: 150_000 }, 150_000],
  ['alternatives', 'injectionCurrent', { injectionCurrent: '120 A' }, 120],
  ['alternatives', 'injectionDelay', { injectionDelay: '500 ms' }, 0.5],
  ['alternatives', 'lineResistance', { lineResistance: '1200 mohm' }, 1.2],
  ['alternatives', 'deadTime', { deadTime: '400 ms' }, 0.4],
];

const LIMIT_KEYS = [
  'instantaneousTrip',
  'voltageDip',
  'couplingTorque',
  'gearboxTorque',
  'keyTorque',
  'brakeTorque',
  'deceleration',
  'tippingRatio',
  'slidingFriction',
  'reverseCreep',
  'deadTimeMargin',
  'stopTime',
  'stopAngle',
  'contactLife',
] as const;

function numberAt(scenario: Scenario, section: string, key: string): number {
  const value: unknown = Reflect.get(Reflect.get(scenario, section), key);
  if (typeof value !== 'number') throw new Error(`${section}.${key} is ${String(value)}`);
  return value;
}

describe('every quantity comes out in SI', () => {
  it.each(QUANTITIES)('%s.%s from %j', (section, key, group, expected) => {
    expectWithin(numberAt(sectionsOf({ [section]: group }), section, key), expected, ROUNDED, key);
  });

  it.each([
    ['ratedVoltage', '0.4 kV', 400],
    ['ratedCurrentAc4', '55 A', 55],
    ['lifeAc3', 1.5e6, 1_500_000],
    ['mechanicalLife', 1e7, 10_000_000],
    ['makingCapacity', '0.96 kA', 960],
    ['breakingCapacity', '800 A', 800],
    ['bounceTime', '2 ms', 0.002],
    ['operationsPerHourAc3', 1200, 1200],
    ['operationsPerHourAc4', 300, 300],
  ] as const)('%s %s of a contactor holds for both', (key, written, expected) => {
    const contactors = sectionsOf({ contactors: { ...AC3, [key]: written } }).contactors;
    expect([contactors?.forward[key], contactors?.reverse[key]]).toEqual([expected, expected]);
  });
});

describe('a limit', () => {
  it.each(LIMIT_KEYS)('%s may be stated not to apply', (key) => {
    expect(sectionsOf({ limits: { [key]: 'none' } }).limits?.[key]).toBe('none');
  });

  it('that is not stated is not known, which is not the same', () => {
    const { limits } = sectionsOf({ limits: {} });
    expect(Object.keys(limits ?? {}).toSorted()).toEqual([...LIMIT_KEYS, 'decelerationRadius'].toSorted());
    expect(new Set(Object.values(limits ?? {}))).toEqual(new Set([null]));
  });
});

describe('the thermal data', () => {
  it.each([
    [130, '130'],
    ['130', '130'],
    ['B', '130'],
    ['130 (B)', '130'],
    [155, '155'],
    ['155', '155'],
    ['F', '155'],
    ['155 (F)', '155'],
    [180, '180'],
    ['180', '180'],
    ['H', '180'],
    ['180 (H)', '180'],
  ])('read thermal class %s as %s', (written, expected) => {
    expect(sectionsOf({ thermal: { insulationClass: written } }).thermal?.insulationClass).toBe(expected);
  });

  it('are for 40 °C and sea level where nothing is said, and nothing else is made up', () => {
    expect(sectionsOf({ thermal: {} }).thermal).toEqual({
      insulationClass: null,
      ratedRise: null,
      ambient: 40,
      altitude: 0,
      lockedRotorTimeCold: null,
      lockedRotorTimeHot: null,
      cageLimit: null,
      cageRatedTemperature: null,
      windingHeatCapacity: null,
      cageHeatCapacity: null,
      frameHeatCapacity: null,
      coolingTimeConstant: null,
      standstillCooling: null,
      outerCageShare: null,
      noLoadStartsPerHour: null,
    });
  });

  it('split the heat capacity of two stated cages', () => {
    const { machine, thermal } = JUDGEMENT;
    expect(sectionsOf({ machine, thermal }).thermal?.outerCageShare).toBe(0.45);
  });
});

describe('the duty', () => {
  it.each([
    ['start and coast', 'startCoast', 0],
    ['start and plug stop', 'startPlugStop', 1],
    // The rest are reversals: no stop of that cycle is a plug stop unless it is said.
    ['full reversal', 'fullReversal', 0],
  ] as const)('%s is the cycle %s, of which a share of %d is plugged', (cycle, expected, share) => {
    expect(sectionsOf({ duty: { cycle } }).duty).toMatchObject({ cycle: expected, pluggingShare: share });
  });

  it('is plug stops throughout where nothing is said', () => {
    expect(sectionsOf({ duty: {} }).duty).toEqual({
      cycle: 'startPlugStop',
      operationsPerHour: null,
      operationsPerDay: null,
      runningTime: null,
      cyclicDurationFactor: null,
      pluggingShare: 1,
      inchingShare: 0,
      contactsChanged: null,
      operationsSince: null,
    });
  });

  it('plugs what inching leaves', () => {
    expect(sectionsOf({ duty: { inchingShare: '25 %' } }).duty?.pluggingShare).toBe(0.75);
  });

  it('has its day from a text with quotes and without', () => {
    const base = scenarioToYaml(sectionsOf({}));
    for (const written of ['2024-02-29', '"2024-02-29"', "'2024-02-29'"])
      expect(parseScenario(`${base}\nduty: { contactsChanged: ${written} }\n`).duty?.contactsChanged).toBe(
        '2024-02-29',
      );
  });
});

describe('the contactors', () => {
  const table = [
    { current: '80 A', operations: 1.5e6 },
    { current: '0.48 kA', operations: 6e4 },
  ];
  const all = { ...AC3, ratedCurrentAc4: '55 A', lifeAc4: 2e5, lifeTable: table, bounceTime: '2 ms' };

  it('have a table of life against current', () => {
    expect(sectionsOf({ contactors: all }).contactors?.forward.lifeTable).toEqual([
      { current: 80, operations: 1_500_000 },
      { current: 480, operations: 60_000 },
    ]);
  });

  it('differ where the reversing one says so, and there alone', () => {
    const { forward, reverse } = sectionsOf({ contactors: { ...all, reverse: { bounceTime: '3 ms' } } })
      .contactors ?? { forward: null, reverse: null };
    expect(forward?.bounceTime).toBe(0.002);
    expect(reverse).toEqual({ ...forward, bounceTime: 0.003 });
  });

  it('share nothing where the reversing one states its own rated current and so is another device', () => {
    const reverse = { ratedCurrentAc3: '95 A', lifeAc3: 1e6 };
    expect(sectionsOf({ contactors: { ...all, reverse } }).contactors?.reverse).toEqual({
      ratedVoltage: null,
      ratedCurrentAc3: 95,
      ratedCurrentAc4: null,
      lifeAc3: 1_000_000,
      lifeAc4: null,
      lifeTable: null,
      mechanicalLife: null,
      makingCapacity: null,
      breakingCapacity: null,
      bounceTime: null,
      operationsPerHourAc3: null,
      operationsPerHourAc4: null,
    });
  });
});

describe('title block, protection and alternatives', () => {
  it('hold what is written', () => {
    const { titleBlock, protection, alternatives } = sectionsOf(JUDGEMENT);
    expect(titleBlock).toEqual(JUDGEMENT.titleBlock);
    expect(protection).toEqual({
      overload: { setting: 62, tripClass: '10A' },
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
    });
    expect(alternatives).toEqual({
      mechanicalBrake: { torque: 300, delay: 0.06 },
      injectionCurrent: 120,
      injectionDelay: 0.5,
      lineResistance: 1.2,
      deadTime: 0.4,
    });
  });

  it('make up nothing', () => {
    const { titleBlock, protection, alternatives } = sectionsOf({
      titleBlock: {},
      protection: {},
      alternatives: {},
    });
    expect(new Set(Object.values(titleBlock ?? {}))).toEqual(new Set([null]));
    expect(Object.keys(titleBlock ?? {})).toHaveLength(6);
    expect(protection).toEqual({ overload: null, curves: [] });
    expect(new Set(Object.values(alternatives ?? {}))).toEqual(new Set([null]));
    expect(Object.keys(alternatives ?? {})).toHaveLength(5);
  });

  it('an overload relay without a setting is set to the rated current of the machine', () => {
    const machine = { rated: { current: '46.8 A' } };
    const { protection } = sectionsOf({ machine, protection: { overload: { class: 20 } } });
    expect(protection?.overload).toEqual({ setting: 46.8, tripClass: '20' });
  });
});

it('a section that is left out stays out', () => {
  const scenario = sectionsOf({});
  expect(SECTIONS.filter((section) => section in scenario)).toEqual([]);
  for (const section of SECTIONS) {
    const group = section === 'contactors' ? AC3 : {};
    expect(SECTIONS.filter((one) => one in sectionsOf({ [section]: group }))).toEqual([section]);
  }
});

describe('what was not stated is listed beside what was', () => {
  const originsOf = (changes: Group) => {
    const { origins } = readScenario(minimalScenario(changes), {}, stubEstimator());
    const found = origins.filter(({ path }) => SECTIONS.some((section) => path.startsWith(`${section}.`)));
    return found.map(({ path, value, origin }) => `${path} ${value} (${origin})`);
  };

  it.each([
    [
      'thermal data',
      { thermal: { ratedRise: '80 K' } },
      [
        'thermal.ratedRise 80 K (given)',
        'thermal.ambient 40 degC (default)',
        'thermal.altitude 0 m (default)',
      ],
    ],
    [
      'a duty',
      { duty: { inchingShare: '10 %' } },
      [
        'duty.inchingShare 10 % (given)',
        'duty.cycle start and plug stop (default)',
        'duty.pluggingShare 90 % (default)',
      ],
    ],
    [
      'contactors',
      { contactors: AC3 },
      ['contactors.ratedCurrentAc3 80 A (given)', 'contactors.reverse as the forward contactor (default)'],
    ],
    [
      'an overload relay',
      { machine: { rated: { current: '46.8 A' } }, protection: { overload: { class: 20 } } },
      ['protection.overload.class 20 (given)', 'protection.overload.setting 46.8 A (derived)'],
    ],
  ] as const)('of %s', (_, changes, expected) => {
    expect(originsOf(changes)).toEqual(expected);
  });
});

it('a file with sections of the judgement runs as one without them', () => {
  const source = readFileSync('examples/teacher/what-does-a-full-reversal-cost.yaml', 'utf8');
  const plain = parseScenario(source);
  const judged = parseScenario(
    `${source}\nthermal: { insulationClass: F }\nduty: { operationsPerHour: 20 }\n`,
  );
  const { thermal, duty, ...rest } = judged;
  expect(rest).toEqual(plain);
  expect([thermal?.insulationClass, duty?.operationsPerHour]).toEqual(['155', 20]);
});
