import { describe, expect, it } from 'vitest';
import { JUDGEMENT, nameplateScenario, PLATE } from './everyKey.ts';
import { codesOf, type Group, minimalScenario, problemsOf } from './minimalScenario.ts';
import { accepts, refuses } from './refusals.ts';

const thermal = (group: Group) => minimalScenario({ thermal: group });
const duty = (group: Group) => minimalScenario({ duty: group });
const contactors = (group: Group) => minimalScenario({ contactors: { ratedCurrentAc3: '80 A', ...group } });
const limits = (group: Group) => minimalScenario({ limits: group });
const protection = (group: Group) => minimalScenario({ protection: group });
const alternatives = (group: Group) => minimalScenario({ alternatives: group });

const lifeTable = (...points: readonly (readonly [string, number])[]) =>
  points.map(([current, operations]) => ({ current, operations }));
const curve = (...points: readonly (readonly [string, string])[]) => ({
  name: 'main fuse',
  kind: 'fuse',
  points: points.map(([current, time]) => ({ current, time })),
});
const FUSE = curve(['250 A', '600 s'], ['1200 A', '0.4 s']);

describe('what cannot be beside each other in the thermal data', () => {
  refuses([
    [
      'a rise that no class of its insulation allows',
      thermal({ insulationClass: 'B', ratedRise: '90.5 K' }),
      'conflict thermal.ratedRise',
      'takes the winding beyond 130 degC, the temperature of its thermal class',
      'a rise up to 90 K',
    ],
    [
      'air hotter than the insulation',
      thermal({ insulationClass: 'B', ambient: '130 degC' }),
      'conflict thermal.ambient',
      'is not below 130 degC, the temperature of thermal class 130 (B)',
      'cooling air',
    ],
    [
      'a locked rotor withstood longer from hot',
      thermal({ lockedRotorTimeCold: '12 s', lockedRotorTimeHot: '12.1 s' }),
      'conflict thermal.lockedRotorTimeHot',
      'longer than the 12 s from ambient',
      'up to lockedRotorTimeCold',
    ],
    [
      'a cage at rated load as cold as the air',
      thermal({ ambient: '45 degC', cageRatedTemperature: '45 degC' }),
      'conflict thermal.cageRatedTemperature',
      'ambient temperature of 45 degC',
      'higher',
    ],
    [
      'a cage colder than the 40 °C that hold where nothing is said',
      thermal({ cageRatedTemperature: '39 degC' }),
      'conflict thermal.cageRatedTemperature',
      'ambient temperature of 40 degC',
      'higher',
    ],
    [
      'a cage that reaches its limit at rated load',
      thermal({ cageLimit: '140 degC', cageRatedTemperature: '140 degC' }),
      'conflict thermal.cageLimit',
      'the 140 degC of the cage at rated load',
      'above cageRatedTemperature',
    ],
    [
      'a limit of the cage below the air',
      thermal({ cageLimit: '35 degC' }),
      'conflict thermal.cageLimit',
      'ambient temperature of 40 degC',
      'higher',
    ],
    [
      'an outer cage where there is one cage',
      thermal({ outerCageShare: '40 %' }),
      'conflict thermal.outerCageShare',
      'has one cage',
      'two stated cages',
    ],
    [
      'an outer cage that comes from a nameplate',
      { ...nameplateScenario(PLATE), thermal: { outerCageShare: '40 %' } },
      'conflict thermal.outerCageShare',
      'found by fitting',
      'two stated cages',
    ],
  ]);

  accepts([
    ['a rise that uses a class up', thermal({ insulationClass: 'B', ratedRise: '90 K' })],
    ['equal times with a locked rotor', thermal({ lockedRotorTimeCold: '12 s', lockedRotorTimeHot: '12 s' })],
    ['air just below the class', thermal({ insulationClass: 'B', ambient: '129 degC' })],
    ['a cage a kelvin above the air', thermal({ cageRatedTemperature: '41 degC', cageLimit: '42 degC' })],
  ]);
});

describe('what cannot be beside each other in a duty', () => {
  refuses([
    [
      'a running time and a cyclic duration factor',
      duty({ runningTime: '25 s', cyclicDurationFactor: '40 %' }),
      'conflict duty.cyclicDurationFactor',
      'beside runningTime',
      'one of the two',
    ],
    [
      'more than all operations',
      duty({ pluggingShare: '70 %', inchingShare: '31 %' }),
      'conflict duty.inchingShare',
      '101 % of all',
      '100 %',
    ],
    [
      'more operations in a day than 24 hours hold',
      duty({ operationsPerHour: 10, operationsPerDay: 241 }),
      'conflict duty.operationsPerDay',
      '24 hours of 10',
      'at most 240',
    ],
    [
      'running longer than from one operation to the next',
      duty({ operationsPerHour: 60, runningTime: '61 s' }),
      'conflict duty.runningTime',
      'the 60 s from one operation to the next',
      'less than 60 s',
    ],
  ]);

  accepts([
    ['shares of all operations together', duty({ pluggingShare: '70 %', inchingShare: '30 %' })],
    ['operations round the clock', duty({ operationsPerHour: 10, operationsPerDay: 240 })],
    ['a counter without a day, and a day without a counter', duty({ operationsSince: 9 })],
    ['a day without a counter', duty({ contactsChanged: '2026-01-31' })],
  ]);
});

describe('what cannot be beside each other in the data of contactors', () => {
  refuses([
    [
      'more current in AC-4 than in AC-3',
      contactors({ ratedCurrentAc4: '81 A' }),
      'conflict contactors.ratedCurrentAc4',
      'above the 80 A of AC-3',
      'up to ratedCurrentAc3',
    ],
    [
      'a life in AC-4 at no current',
      contactors({ lifeAc4: 2e5 }),
      'conflict contactors.lifeAc4',
      'without ratedCurrentAc4',
      'ratedCurrentAc4 beside it',
    ],
    [
      'a table whose currents fall',
      contactors({ lifeTable: lifeTable(['90 A', 2e5], ['80 A', 1e5]) }),
      'conflict contactors.lifeTable.1.current',
      'not above the current',
      'ascending',
    ],
    [
      'a table of equal lives',
      contactors({ lifeTable: lifeTable(['80 A', 2e5], ['90 A', 2e5]) }),
      'conflict contactors.lifeTable.1.operations',
      'not fewer',
      'descending operations',
    ],
    [
      'the same in the reversing contactor',
      contactors({ reverse: { lifeTable: lifeTable(['80 A', 2e5], ['90 A', 2e5]) } }),
      'conflict contactors.reverse.lifeTable.1.operations',
      'not fewer',
      'descending operations',
    ],
    [
      'a reversing contactor with more current in AC-4 than both have in AC-3',
      contactors({ reverse: { ratedCurrentAc4: '81 A' } }),
      'conflict contactors.reverse.ratedCurrentAc4',
      'above the 80 A of AC-3',
      'up to ratedCurrentAc3',
    ],
    [
      'a life in AC-4 of another device that takes no current over',
      contactors({ ratedCurrentAc4: '55 A', reverse: { ratedCurrentAc3: '95 A', lifeAc4: 2e5 } }),
      'conflict contactors.reverse.lifeAc4',
      'without ratedCurrentAc4',
      'ratedCurrentAc4 beside it',
    ],
  ]);

  accepts([
    ['equal currents', contactors({ ratedCurrentAc4: '80 A' })],
    [
      'a life in AC-4 at the current taken over',
      contactors({ ratedCurrentAc4: '55 A', reverse: { lifeAc4: 1e5 } }),
    ],
  ]);

  it('what is taken over is reported once', () => {
    expect(codesOf(contactors({ ratedCurrentAc4: '81 A', reverse: { bounceTime: '3 ms' } }))).toEqual([
      'conflict contactors.ratedCurrentAc4',
    ]);
  });
});

describe('what cannot be beside each other in limits and protection', () => {
  const noRadius = ['without decelerationRadius', 'such as `160 mm`'] as const;
  refuses([
    [
      'a deceleration nowhere',
      limits({ deceleration: '2 m/s^2' }),
      'conflict limits.deceleration',
      ...noRadius,
    ],
    ['tipping nowhere', limits({ tippingRatio: 2 }), 'conflict limits.tippingRatio', ...noRadius],
    ['sliding nowhere', limits({ slidingFriction: 0.3 }), 'conflict limits.slidingFriction', ...noRadius],
    [
      'two overload relays in the same lines',
      minimalScenario({
        machine: { rated: { current: '46.8 A' } },
        starter: { control: { scheme: 'reversing directly', overload: { class: 10 } } },
        actions: [{ at: '0 s', do: 'press forward' }],
        protection: { overload: { setting: '62 A', class: 10 } },
      }),
      'conflict protection.overload',
      'overload relay of the control circuit',
      'under starter.control only',
    ],
    [
      'an overload relay set to a current nobody knows',
      protection({ overload: { class: 10 } }),
      'missingKey protection.overload.setting',
      'no rated current',
      '`14.6 A`',
    ],
    [
      'a curve whose currents stand still',
      protection({ curves: [curve(['250 A', '600 s'], ['250 A', '0.4 s'])] }),
      'conflict protection.curves.0.points.1.current',
      'not above',
      'ascending',
    ],
    [
      'a curve whose time rises',
      protection({ curves: [curve(['250 A', '600 s'], ['300 A', '601 s'])] }),
      'conflict protection.curves.0.points.1.time',
      'longer',
      'do not rise',
    ],
    [
      'two curves of one name',
      protection({ curves: [FUSE, FUSE] }),
      'conflict protection.curves.1.name',
      'a curve before it',
      'a name of its own',
    ],
  ]);

  accepts([
    ['a deceleration stated not to matter', limits({ deceleration: 'none', tippingRatio: 'none' })],
    [
      'an overload relay beside a control circuit without one',
      minimalScenario({
        starter: { control: { scheme: 'reversing directly', overload: 'none' } },
        actions: [{ at: '0 s', do: 'press forward' }],
        protection: { overload: { setting: '62 A', class: 10 } },
      }),
    ],
    [
      'a breaker that trips at once above a current',
      protection({ curves: [curve(['250 A', '600 s'], ['800 A', '20 ms'], ['4 kA', '20 ms'])] }),
    ],
  ]);
});

describe('what a single value cannot be', () => {
  refuses([
    [
      'a rise as a temperature',
      thermal({ ratedRise: '80 degC' }),
      'wrongUnit thermal.ratedRise',
      'a difference',
      '`80 K`',
    ],
    [
      'a thermal class that is not covered',
      thermal({ insulationClass: 105 }),
      'unknownWord thermal.insulationClass',
      '105 is not a thermal class',
      '`155 (F)`',
    ],
    [
      'a thermal class by a small letter',
      thermal({ insulationClass: 'f' }),
      'unknownWord thermal.insulationClass',
      '"f"',
      '`F` (one of',
    ],
    [
      'an energy where a heat capacity is meant',
      thermal({ cageHeatCapacity: '390 J' }),
      'wrongUnit thermal.cageHeatCapacity',
      'not a unit of heat capacity',
      '`kJ/K`',
    ],
    [
      'more cooling at standstill than while running',
      thermal({ standstillCooling: '120 %' }),
      'outOfRange thermal.standstillCooling',
      'out of range',
      'from 0 % to 100 %',
    ],
    [
      'a percentage without its sign',
      duty({ cyclicDurationFactor: 40 }),
      'outOfRange duty.cyclicDurationFactor',
      '40',
      '`40 %`',
    ],
    [
      'a long time without a unit, for which minutes are suggested',
      thermal({ coolingTimeConstant: 35 }),
      'missingUnit thermal.coolingTimeConstant',
      '35 has no unit',
      '`35 min`',
    ],
    [
      'a cycle with a slip of the pen',
      duty({ cycle: 'start and plug stopp' }),
      'unknownWord duty.cycle',
      'not known here',
      '`start and plug stop` (one of',
    ],
    [
      'a day that does not exist',
      duty({ contactsChanged: '2026-02-29' }),
      'outOfRange duty.contactsChanged',
      '"2026-02-29" is no day of the calendar',
      '`2026-03-14`',
    ],
    [
      'a day outside the years of motors',
      duty({ contactsChanged: '1899-12-31' }),
      'outOfRange duty.contactsChanged',
      '"1899-12-31" is not in the years 1900 to 2199',
      '`2026-03-14`',
    ],
    [
      'a day in another order',
      minimalScenario({ titleBlock: { date: '14.03.2026' } }),
      'outOfRange titleBlock.date',
      'not a day written as YYYY-MM-DD',
      '`2026-03-14`',
    ],
    [
      'a year alone',
      duty({ contactsChanged: 2026 }),
      'wrongType duty.contactsChanged',
      'found 2026',
      'YYYY-MM-DD',
    ],
    [
      'a revision as a number',
      minimalScenario({ titleBlock: { revision: 2 } }),
      'wrongType titleBlock.revision',
      'found 2',
      'in quotes',
    ],
    [
      'a life of no operations',
      contactors({ lifeAc3: 0 }),
      'outOfRange contactors.lifeAc3',
      '0 is not allowed',
      'from 1 to',
    ],
    [
      'contactors without a rated current',
      minimalScenario({ contactors: {} }),
      'missingKey contactors.ratedCurrentAc3',
      'is missing',
      '`18 A`',
    ],
    [
      'a table of one point',
      contactors({ lifeTable: lifeTable(['80 A', 2e5]) }),
      'outOfRange contactors.lifeTable',
      'fewer than two',
      'two points',
    ],
    [
      'bounce of a second',
      contactors({ bounceTime: '1 s' }),
      'outOfRange contactors.bounceTime',
      '1 s is out of range',
      '0.1 s',
    ],
    [
      'a limit without a unit',
      limits({ stopTime: 1.2 }),
      'missingUnit limits.stopTime',
      '1.2 has no unit',
      '`1.2 s`',
    ],
    [
      'a limit of zero torque',
      limits({ keyTorque: '0 N m' }),
      'outOfRange limits.keyTorque',
      '0 N m is out of range',
      'or `none`',
    ],
    [
      'a limit in another word',
      limits({ keyTorque: 'unlimited' }),
      'notANumber limits.keyTorque',
      '"unlimited"',
      'or `none`',
    ],
    [
      'a deceleration in grams',
      limits({ deceleration: '0.3 g', decelerationRadius: '1 m' }),
      'wrongUnit limits.deceleration',
      'g is a gram',
      '`0.3 g0`',
    ],
    [
      'a dip of more than everything',
      limits({ voltageDip: '112 %' }),
      'outOfRange limits.voltageDip',
      'out of range',
      'above 0 % to 100 %',
    ],
    [
      'a count in another word',
      limits({ contactLife: 'non' }),
      'unknownWord limits.contactLife',
      'not known here',
      '`none` (a plain number',
    ],
    [
      'a count below one',
      limits({ contactLife: 0 }),
      'outOfRange limits.contactLife',
      '0 is not allowed',
      'from 1 to',
    ],
    [
      'a device that is neither breaker nor fuse',
      protection({ curves: [{ ...FUSE, kind: 'relay' }] }),
      'unknownWord protection.curves.0.kind',
      '"relay"',
      '`breaker`',
    ],
    [
      'a trip class that is none',
      protection({ overload: { setting: '62 A', class: 15 } }),
      'unknownWord protection.overload.class',
      '15 is not a trip class',
      '`10A`',
    ],
    [
      'a brake without a torque',
      alternatives({ mechanicalBrake: { delay: '60 ms' } }),
      'missingKey alternatives.mechanicalBrake.torque',
      'is missing',
      '`60 N m`',
    ],
    [
      'a resistor of nothing',
      alternatives({ lineResistance: '0 ohm' }),
      'outOfRange alternatives.lineResistance',
      'out of range',
      'above 0 ohm',
    ],
  ]);
});

describe('a key that is not known is refused with the nearest one', () => {
  refuses([
    [
      'in the title block',
      minimalScenario({ titleBlock: { client: 'x' } }),
      'unknownKey titleBlock.client',
      'not a known key',
      'plant',
    ],
    [
      'in thermal',
      thermal({ ambiant: '40 degC' }),
      'unknownKey thermal.ambiant',
      'not a known key',
      '`ambient`',
    ],
    [
      'in duty',
      duty({ operationPerHour: 3 }),
      'unknownKey duty.operationPerHour',
      'not a known key',
      '`operationsPerHour`',
    ],
    [
      'in contactors',
      contactors({ mecanicalLife: 1e6 }),
      'unknownKey contactors.mecanicalLife',
      'not a known key',
      '`mechanicalLife`',
    ],
    [
      'in reverse',
      contactors({ reverse: { interlockMechanicalLife: 1e6 } }),
      'unknownKey contactors.reverse.interlockMechanicalLife',
      'not a known key',
      'mechanicalLife',
    ],
    [
      'in limits',
      limits({ couplingTorqe: '9 N m' }),
      'unknownKey limits.couplingTorqe',
      'not a known key',
      '`couplingTorque`',
    ],
    [
      'in protection',
      protection({ curve: [] }),
      'unknownKey protection.curve',
      'not a known key',
      '`curves`',
    ],
    [
      'in alternatives',
      alternatives({ brake: {} }),
      'unknownKey alternatives.brake',
      'not a known key',
      'mechanicalBrake',
    ],
    [
      'for a section',
      minimalScenario({ protections: {} }),
      'unknownKey protections',
      'not a known key',
      '`protection`',
    ],
  ]);
});

it('everything that is wrong is listed at once, with the line it stands in', () => {
  const text = JSON.stringify(
    minimalScenario({
      thermal: { ratedRise: '80 degC', lockedRotorTimeCold: '5 s', lockedRotorTimeHot: '9 s' },
      duty: { pluggingShare: '80 %', inchingShare: '80 %', contactsChanged: '2026-13-01' },
      contactors: { lifeAc4: 1e5, bounceTime: '9 s' },
      limits: { tippingRatio: 2, stopTime: 5 },
      protection: { curves: [curve(['9 A', '1 s'], ['8 A', '2 s'])] },
      alternatives: { injectionCurrent: '5 V' },
    }),
    null,
    1,
  );
  const problems = problemsOf(text);
  expect(problems.map(({ code, path }) => `${code} ${path}`).toSorted()).toEqual(
    [
      'wrongUnit thermal.ratedRise',
      'conflict thermal.lockedRotorTimeHot',
      'conflict duty.inchingShare',
      'outOfRange duty.contactsChanged',
      'missingKey contactors.ratedCurrentAc3',
      'conflict contactors.lifeAc4',
      'outOfRange contactors.bounceTime',
      'conflict limits.tippingRatio',
      'missingUnit limits.stopTime',
      'conflict protection.curves.0.points.1.current',
      'conflict protection.curves.0.points.1.time',
      'wrongUnit alternatives.injectionCurrent',
    ].toSorted(),
  );
  const lines = text.split('\n');
  const creep = problems.find(({ path }) => path === 'limits.stopTime');
  expect(lines[(creep?.line ?? 0) - 1]).toContain('"stopTime"');
});

it('nothing is concluded from a value that was refused itself', () => {
  const machine = JUDGEMENT.machine;
  expect(
    codesOf(
      minimalScenario({
        machine,
        thermal: {
          insulationClass: 'Z',
          ambient: '140 degC',
          cageLimit: '9 V',
          cageRatedTemperature: '150 degC',
        },
        contactors: { ratedCurrentAc3: '80', ratedCurrentAc4: 'x', lifeAc4: 2e5 },
        limits: { deceleration: '2 m/s^2', decelerationRadius: 'long' },
      }),
    ),
  ).toEqual([
    'unknownWord thermal.insulationClass',
    'wrongUnit thermal.cageLimit',
    'missingUnit contactors.ratedCurrentAc3',
    'notANumber contactors.ratedCurrentAc4',
    'notANumber limits.decelerationRadius',
  ]);
});
