import { describe, expect, it } from 'vitest';
import { assertScenario } from '../../../src/scenario/assertScenario.ts';
import type { JudgementData, Scenario } from '../../../src/scenario/scenario.ts';
import { ScenarioError } from '../../../src/scenario/scenarioError.ts';
import { JUDGEMENT } from './everyKey.ts';
import { minimalScenario, parseScenario } from './minimalScenario.ts';

const whole = parseScenario(minimalScenario(JUDGEMENT));
const section = <K extends keyof JudgementData>(key: K): NonNullable<Scenario[K]> => {
  const value = whole[key];
  if (value === undefined) throw new Error(`${key} is missing`);
  return value;
};

function problemsOf(changes: Partial<Scenario>): string[] {
  try {
    assertScenario({ ...whole, ...changes });
    return [];
  } catch (error) {
    if (error instanceof ScenarioError) return error.problems.map(({ code, path }) => `${code} ${path}`);
    throw error;
  }
}

/** A section with one value changed to something that no file can state. */
const changed = <K extends keyof JudgementData>(key: K, path: readonly (string | number)[], value: unknown) =>
  ({ [key]: replace(section(key), path, value) }) as Partial<Scenario>;

function replace(data: unknown, [step, ...rest]: readonly (string | number)[], value: unknown): unknown {
  if (step === undefined) return value;
  if (Array.isArray(data)) return data.map((one, j) => (j === step ? replace(one, rest, value) : one));
  const group = data as Record<string, unknown>;
  return { ...group, [step]: replace(group[step], rest, value) };
}

/** Numbers that must be above 0 and may be null. */
const POSITIVE: Readonly<Partial<Record<keyof JudgementData, readonly string[]>>> = {
  thermal: [
    'ratedRise',
    'lockedRotorTimeCold',
    'lockedRotorTimeHot',
    'windingHeatCapacity',
    'cageHeatCapacity',
    'frameHeatCapacity',
    'coolingTimeConstant',
    'outerCageShare',
    'noLoadStartsPerHour',
  ],
  duty: ['operationsPerHour', 'operationsPerDay'],
  contactors: ['interlockMechanicalLife', 'switchMechanicalLife'],
  limits: [
    'instantaneousTrip',
    'voltageDip',
    'couplingTorque',
    'keyTorque',
    'deceleration',
    'decelerationRadius',
    'tippingRatio',
    'stopTime',
    'stopAngle',
    'contactLife',
  ],
  alternatives: ['injectionCurrent', 'lineResistance'],
};

const OF_A_CONTACTOR = [
  'ratedVoltage',
  'ratedCurrentAc3',
  'ratedCurrentAc4',
  'lifeAc3',
  'lifeAc4',
  'mechanicalLife',
  'makingCapacity',
  'breakingCapacity',
  'operationsPerHourAc3',
  'operationsPerHourAc4',
] as const;

it('what a file states is possible', () => {
  expect(problemsOf({})).toEqual([]);
});

describe('a number that is none, or not above 0, is refused', () => {
  const rows = Object.entries(POSITIVE).flatMap(([key, names]) =>
    names.map((name) => [key as keyof JudgementData, name] as const),
  );
  it.each(rows)('%s.%s', (key, name) => {
    for (const wrong of [0, Number.NaN, Number.POSITIVE_INFINITY, '5'])
      expect(problemsOf(changed(key, [name], wrong))).toContain(`outOfRange ${key}.${name}`);
    expect(problemsOf(changed(key, [name], undefined))).toContain(`missingKey ${key}.${name}`);
  });

  it.each(['forward', 'reverse'] as const)('of the %s contactor', (which) => {
    for (const name of OF_A_CONTACTOR)
      expect(problemsOf(changed('contactors', [which, name], 0))).toContain(
        `outOfRange contactors.${which}.${name}`,
      );
  });
});

const WRONG: readonly (readonly [string, Partial<Scenario>, string])[] = [
  ['a tag that is no text', changed('titleBlock', ['tag'], 5), 'outOfRange titleBlock.tag'],
  ['an empty tag', changed('titleBlock', ['tag'], ''), 'outOfRange titleBlock.tag'],
  ['a day that does not exist', changed('titleBlock', ['date'], '2026-02-30'), 'outOfRange titleBlock.date'],
  [
    'an unknown thermal class',
    changed('thermal', ['insulationClass'], 'F'),
    'outOfRange thermal.insulationClass',
  ],
  ['no ambient temperature', changed('thermal', ['ambient'], null), 'outOfRange thermal.ambient'],
  ['an altitude without end', changed('thermal', ['altitude'], Number.NaN), 'outOfRange thermal.altitude'],
  [
    'cooling above that while running',
    changed('thermal', ['standstillCooling'], 1.1),
    'outOfRange thermal.standstillCooling',
  ],
  [
    'an inner cage of nothing',
    changed('thermal', ['outerCageShare'], 1),
    'outOfRange thermal.outerCageShare',
  ],
  ['air hotter than the insulation', changed('thermal', ['ambient'], 155), 'conflict thermal.ambient'],
  [
    'a longer withstand from hot',
    changed('thermal', ['lockedRotorTimeHot'], 21),
    'conflict thermal.lockedRotorTimeHot',
  ],
  ['a cage beyond its limit', changed('thermal', ['cageLimit'], 139), 'conflict thermal.cageLimit'],
  [
    'an outer cage of one',
    { machine: { ...whole.machine, cages: whole.machine.cages.slice(1) } },
    'conflict thermal.outerCageShare',
  ],
  ['an unknown cycle', changed('duty', ['cycle'], 'plugging'), 'outOfRange duty.cycle'],
  ['a negative share', changed('duty', ['inchingShare'], -0.1), 'outOfRange duty.inchingShare'],
  ['no share', changed('duty', ['pluggingShare'], null), 'outOfRange duty.pluggingShare'],
  ['more than all', changed('duty', ['inchingShare'], 0.31), 'conflict duty.inchingShare'],
  ['a time that runs backwards', changed('duty', ['runningTime'], -1), 'outOfRange duty.runningTime'],
  ['time and factor', changed('duty', ['cyclicDurationFactor'], 0.4), 'conflict duty.cyclicDurationFactor'],
  ['a day that is no day', changed('duty', ['contactsChanged'], 'May'), 'outOfRange duty.contactsChanged'],
  ['a negative count', changed('duty', ['operationsSince'], -1), 'outOfRange duty.operationsSince'],
  [
    'a negative bounce',
    changed('contactors', ['forward', 'bounceTime'], -1e-3),
    'outOfRange contactors.forward.bounceTime',
  ],
  [
    'AC-4 above AC-3',
    changed('contactors', ['reverse', 'ratedCurrentAc4'], 96),
    'conflict contactors.reverse.ratedCurrentAc4',
  ],
  [
    'a life at no current',
    changed('contactors', ['forward', 'ratedCurrentAc4'], null),
    'conflict contactors.forward.lifeAc4',
  ],
  [
    'a table of nothing',
    changed('contactors', ['forward', 'lifeTable'], []),
    'outOfRange contactors.forward.lifeTable',
  ],
  [
    'a table that falls back',
    changed('contactors', ['forward', 'lifeTable', 1, 'current'], 80),
    'conflict contactors.forward.lifeTable.1.current',
  ],
  [
    'a table that rises',
    changed('contactors', ['forward', 'lifeTable', 1, 'operations'], 2e6),
    'conflict contactors.forward.lifeTable.1.operations',
  ],
  ['a limit in another word', changed('limits', ['keyTorque'], 'unlimited'), 'outOfRange limits.keyTorque'],
  [
    'a radius that does not apply',
    changed('limits', ['decelerationRadius'], 'none'),
    'outOfRange limits.decelerationRadius',
  ],
  ['a deceleration nowhere', changed('limits', ['decelerationRadius'], null), 'conflict limits.deceleration'],
  ['a creep below nothing', changed('limits', ['reverseCreep'], -1), 'outOfRange limits.reverseCreep'],
  ['a dip of more than all', changed('limits', ['voltageDip'], 1.2), 'outOfRange limits.voltageDip'],
  [
    'a relay without a setting',
    changed('protection', ['overload', 'setting'], null),
    'outOfRange protection.overload.setting',
  ],
  [
    'an unknown trip class',
    changed('protection', ['overload', 'tripClass'], '15'),
    'outOfRange protection.overload.tripClass',
  ],
  ['no list of curves', changed('protection', ['curves'], undefined), 'missingKey protection.curves'],
  [
    'a curve without a name',
    changed('protection', ['curves', 0, 'name'], ''),
    'outOfRange protection.curves.0.name',
  ],
  [
    'another device',
    changed('protection', ['curves', 0, 'kind'], 'relay'),
    'outOfRange protection.curves.0.kind',
  ],
  [
    'a curve of nothing',
    changed('protection', ['curves', 0, 'points'], []),
    'outOfRange protection.curves.0.points',
  ],
  [
    'a curve that reaches no time',
    changed('protection', ['curves', 0, 'points', 1, 'time'], 0),
    'outOfRange protection.curves.0.points.1.time',
  ],
  [
    'a curve that rises',
    changed('protection', ['curves', 0, 'points', 1, 'time'], 601),
    'conflict protection.curves.0.points.1.time',
  ],
  [
    'a brake that drives',
    changed('alternatives', ['mechanicalBrake', 'torque'], -1),
    'outOfRange alternatives.mechanicalBrake.torque',
  ],
  [
    'a brake before its command',
    changed('alternatives', ['mechanicalBrake', 'delay'], -1),
    'outOfRange alternatives.mechanicalBrake.delay',
  ],
  [
    'a negative wait',
    changed('alternatives', ['injectionDelay'], -1),
    'outOfRange alternatives.injectionDelay',
  ],
  ['a negative dead time', changed('alternatives', ['deadTime'], -1), 'outOfRange alternatives.deadTime'],
];

describe('what a program has put together wrong is refused at its place', () => {
  it.each(WRONG)('%s', (_, changes, expected) => {
    expect(problemsOf(changes)).toContain(expected);
  });

  it('all at once', () => {
    expect(
      problemsOf({
        ...changed('duty', ['operationsSince'], -1),
        ...changed('limits', ['reverseCreep'], -1),
        ...changed('alternatives', ['deadTime'], -1),
      }),
    ).toEqual([
      'outOfRange duty.operationsSince',
      'outOfRange limits.reverseCreep',
      'outOfRange alternatives.deadTime',
    ]);
  });
});
