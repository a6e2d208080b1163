import { describe, expect, it } from 'vitest';
import { codesOf, type Group, minimalScenario, problemsOf } from './minimalScenario.ts';

/** What is wrong, the change that makes it wrong, and the only problem that must come of it. */
type Case = readonly [string, Group, string];

const transformer = { rating: '630 kVA', impedance: '6 %' };
const cable = { length: '80 m', resistance: '0.524 ohm/km' };

const supplyCases: readonly Case[] = [
  [
    'a transformer beside a short-circuit power',
    { supply: { transformer, shortCircuitPower: '5 MVA' } },
    'conflict supply.shortCircuitPower',
  ],
  [
    'a transformer beside a source resistance',
    { supply: { transformer, sourceResistance: '1 mohm' } },
    'conflict supply.sourceResistance',
  ],
  [
    'an impedance of 6 without its percent sign',
    { supply: { transformer: { ...transformer, impedance: 6 } } },
    'outOfRange supply.transformer.impedance',
  ],
  [
    'an impedance in ohm',
    { supply: { transformer: { ...transformer, impedance: '6 ohm' } } },
    'wrongUnit supply.transformer.impedance',
  ],
  [
    'a rating in kW',
    { supply: { transformer: { ...transformer, rating: '630 kW' } } },
    'wrongUnit supply.transformer.rating',
  ],
  [
    'X/R beside a copper loss',
    { supply: { transformer: { ...transformer, xOverR: 3, copperLoss: '6.5 kW' } } },
    'conflict supply.transformer.copperLoss',
  ],
  [
    'a copper loss above the impedance',
    { supply: { transformer: { ...transformer, copperLoss: '65 kW' } } },
    'conflict supply.transformer.copperLoss',
  ],
  [
    'X/R of a network nobody described',
    { supply: { transformer: { ...transformer, networkXOverR: 10 } } },
    'conflict supply.transformer.networkXOverR',
  ],
  [
    'a cable without a length',
    { supply: { cable: { resistance: '0.524 ohm/km' } } },
    'conflict supply.cable',
  ],
  ['a cable without a resistance', { supply: { cable: { length: '80 m' } } }, 'conflict supply.cable'],
  [
    'a cable with two resistances',
    { supply: { cable: { ...cable, crossSection: '35 mm^2' } } },
    'conflict supply.cable',
  ],
  [
    'a cable with two reactances',
    { supply: { cable: { ...cable, reactance: '0.08 ohm/km', inductance: '1 mH' } } },
    'conflict supply.cable.inductance',
  ],
  [
    'a metal without a cross-section',
    { supply: { cable: { ...cable, conductor: 'copper' } } },
    'conflict supply.cable.conductor',
  ],
  [
    'a cross-section in metres',
    { supply: { cable: { length: '80 m', crossSection: '35 m' } } },
    'wrongUnit supply.cable.crossSection',
  ],
  [
    '35 m² of copper',
    { supply: { cable: { length: '80 m', crossSection: '35 m^2' } } },
    'outOfRange supply.cable.crossSection',
  ],
  [
    'a cable resistance in volts',
    { supply: { cable: { ...cable, resistance: '5 V' } } },
    'wrongUnit supply.cable.resistance',
  ],
];

const main = (...points: Group[]): Group => ({ machine: { saturation: { main: points } } });
const cages = (count: number) => Array(count).fill({ resistance: '0.3 ohm', leakage: '0.3 ohm' });
const path = { current: '90 A', remaining: '60 %' };

const machineCases: readonly Case[] = [
  [
    'a saturation that is a word',
    { machine: { saturation: { main: 'strong' } } },
    'unknownWord machine.saturation.main',
  ],
  ['a curve of one point', main({ voltage: '460 V', current: '20 A' }), 'outOfRange machine.saturation.main'],
  [
    'a point without a current',
    main({ voltage: '300 V' }, { voltage: '460 V', current: '20 A' }),
    'conflict machine.saturation.main.0',
  ],
  [
    'two ways to write a curve',
    main({ flux: '0.5 Wb', magnetisingCurrent: '12 A' }, { voltage: '460 V', current: '20 A' }),
    'conflict machine.saturation.main.1',
  ],
  [
    'a descending curve',
    main({ voltage: '460 V', current: '20 A' }, { voltage: '300 V', current: '9 A' }),
    'conflict machine.saturation.main.1',
  ],
  [
    'a curve that bends the wrong way',
    main({ voltage: '230 V', current: '12 A' }, { voltage: '460 V', current: '20 A' }),
    'conflict machine.saturation.main.1',
  ],
  [
    'a curve that the stator leakage uses up',
    main({ voltage: '20 V', current: '60 A' }, { voltage: '21 V', current: '90 A' }),
    'conflict machine.saturation.main.0',
  ],
  [
    'typical leakage without a rated current',
    { machine: { saturation: { leakage: 'typical' } } },
    'conflict machine.saturation.leakage',
  ],
  [
    'a leakage path without what remains',
    { machine: { saturation: { leakage: { stator: { current: '90 A' }, cages: [path] } } } },
    'missingKey machine.saturation.leakage.stator.remaining',
  ],
  [
    'nothing remaining',
    { machine: { saturation: { leakage: { stator: { ...path, remaining: 0 }, cages: [path] } } } },
    'outOfRange machine.saturation.leakage.stator.remaining',
  ],
  [
    'a path for a cage that is not there',
    { machine: { saturation: { leakage: { stator: path, cages: [path, path] } } } },
    'conflict machine.saturation.leakage.cages',
  ],
  ['a bare number for the iron loss', { machine: { ironLoss: 350 } }, 'missingUnit machine.ironLoss'],
  ['an iron loss in volts', { machine: { ironLoss: '350 V' } }, 'wrongUnit machine.ironLoss'],
  [
    'an iron loss of zero, which is left out instead',
    { machine: { ironLoss: '0 W' } },
    'outOfRange machine.ironLoss',
  ],
  [
    'an iron loss above the rated power',
    { machine: { ironLoss: '350 kW', rated: { power: '37 kW' } } },
    'conflict machine.ironLoss',
  ],
  [
    'friction without windage',
    { machine: { mechanicalLoss: { friction: '1 N m' } } },
    'missingKey machine.mechanicalLoss.windage',
  ],
  [
    'windage in newton metres',
    { machine: { mechanicalLoss: { friction: '1 N m', windage: '1 N m' } } },
    'wrongUnit machine.mechanicalLoss.windage',
  ],
  [
    'a temperature without the one it is counted from',
    { machine: { temperature: { winding: '110 degC' } } },
    'missingKey machine.temperature.resistancesAt',
  ],
  [
    'a temperature that is an angle',
    { machine: { temperature: { resistancesAt: '20 deg', winding: '110 degC' } } },
    'wrongUnit machine.temperature.resistancesAt',
  ],
  [
    'a bare number of degrees',
    { machine: { temperature: { resistancesAt: 20, winding: '110 degC' } } },
    'missingUnit machine.temperature.resistancesAt',
  ],
  [
    'kelvin meant as Celsius',
    { machine: { temperature: { resistancesAt: '20 K', winding: '110 degC' } } },
    'outOfRange machine.temperature.resistancesAt',
  ],
  [
    'a winding of silver',
    {
      machine: { temperature: { resistancesAt: '20 degC', winding: '110 degC', statorConductor: 'silver' } },
    },
    'unknownWord machine.temperature.statorConductor',
  ],
  [
    'slip rings on a double cage',
    { machine: { cages: cages(2), rotorResistors: { plugging: '1 ohm' } } },
    'conflict machine.rotorResistors',
  ],
  [
    'a step without duration',
    { machine: { rotorResistors: { starting: [{ resistance: '1 ohm' }] } } },
    'missingKey machine.rotorResistors.starting.0.duration',
  ],
];

const gear = { ratio: 10, efficiency: '94 %' };
const coupling = { stiffness: '20 kN m/rad', damping: '10 N m s/rad' };
const table = (direction: string | undefined, ...points: (readonly [string, string])[]): Group => ({
  load: {
    torque: { kind: 'table', direction, points: points.map(([speed, torque]) => ({ speed, torque })) },
  },
});

const loadCases: readonly Case[] = [
  ['a gear without efficiency', { load: { gear: { ratio: 10 } } }, 'missingKey load.gear.efficiency'],
  [
    'a gear of more than all',
    { load: { gear: { ...gear, efficiency: 1.2 } } },
    'outOfRange load.gear.efficiency',
  ],
  [
    'a gear that may lock itself',
    { load: { gear: { ratio: 60, efficiency: '45 %' } } },
    'conflict load.gear',
  ],
  [
    'a gear that locks itself',
    { load: { gear: { ratio: 60, efficiency: '45 %', backwardEfficiency: 0 } } },
    'notSupported load.gear.backwardEfficiency',
  ],
  [
    'a gear with a negative backward efficiency',
    { load: { gear: { ...gear, backwardEfficiency: '-20 %' } } },
    'notSupported load.gear.backwardEfficiency',
  ],
  ['a ratio of 0', { load: { gear: { ...gear, ratio: 0 } } }, 'outOfRange load.gear.ratio'],
  [
    'a coupling without damping',
    { load: { inertia: '1 kg m^2', coupling: { stiffness: '20 kN m/rad' } } },
    'missingKey load.coupling.damping',
  ],
  ['a coupling with nothing behind it', { load: { coupling } }, 'conflict load.inertia'],
  [
    'a coupling with nothing before it',
    { load: { coupling, inertia: '1 kg m^2' }, machine: { inertia: '0 kg m^2' } },
    'conflict machine.inertia',
  ],
  [
    'no inertia before a gear and none behind',
    { load: { gear }, machine: { inertia: '0 kg m^2' } },
    'conflict machine.inertia',
  ],
  [
    'a stiffness in newton metres',
    { load: { inertia: '1 kg m^2', coupling: { ...coupling, stiffness: '20 N m' } } },
    'wrongUnit load.coupling.stiffness',
  ],
  [
    'constant power without a base speed',
    { load: { torque: { kind: 'constantPower', power: '5 kW' } } },
    'missingKey load.torque.baseSpeed',
  ],
  ['a table of one point', table(undefined, ['0 rpm', '8 N m']), 'outOfRange load.torque.points'],
  [
    'a table that ends at rated speed',
    table(undefined, ['0 rpm', '8 N m'], ['1740 rpm', '42 N m']),
    'conflict load.torque.points',
  ],
  [
    'a table that descends',
    table(undefined, ['0 rpm', '8 N m'], ['900 rpm', '9 N m'], ['800 rpm', '9 N m'], ['2200 rpm', '9 N m']),
    'conflict load.torque.points.2.speed',
  ],
  [
    'a mirrored table from below zero',
    table(undefined, ['-100 rpm', '8 N m'], ['2200 rpm', '42 N m']),
    'conflict load.torque.points.0.speed',
  ],
  [
    'a mirrored table that drives',
    table('opposes motion', ['0 rpm', '8 N m'], ['2200 rpm', '-1 N m']),
    'conflict load.torque.points.1.torque',
  ],
  [
    'a table as given that knows no reverse',
    table('as given', ['0 rpm', '8 N m'], ['2200 rpm', '42 N m']),
    'conflict load.torque.points',
  ],
];

const faults = (...list: Group[]): Group => ({ starter: { faults: list } });
const welded = { kind: 'welded pole', contactor: 'forward', pole: 'A' };

const starterCases: readonly Case[] = [
  [
    'star plugging of a star machine',
    { starter: { plugConnection: 'star' } },
    'conflict starter.plugConnection',
  ],
  ['a winding order of a star machine', { starter: { windingOrder: 'AC' } }, 'conflict starter.windingOrder'],
  [
    'delta plugging',
    { machine: { connection: 'delta' }, starter: { plugConnection: 'delta' } },
    'unknownWord starter.plugConnection',
  ],
  [
    'a bypass that is a word',
    { starter: { lineResistors: { resistance: '1 ohm', bypassAfter: 'soon' } } },
    'notANumber starter.lineResistors.bypassAfter',
  ],
  [
    'a bypass without a unit',
    { starter: { lineResistors: { resistance: '1 ohm', bypassAfter: 1 } } },
    'missingUnit starter.lineResistors.bypassAfter',
  ],
  [
    'line resistors without resistance',
    { starter: { lineResistors: {} } },
    'missingKey starter.lineResistors.resistance',
  ],
  [
    'an unknown fault',
    faults({ kind: 'lost fase', phase: 'A', at: '1 s' }),
    'unknownWord starter.faults.0.kind',
  ],
  ['a fault that is a word', { starter: { faults: ['lost phase'] } }, 'wrongType starter.faults.0'],
  [
    'a fault without its phase',
    faults({ kind: 'lost phase', at: '1 s' }),
    'missingKey starter.faults.0.phase',
  ],
  ['phase D', faults({ kind: 'lost phase', phase: 'D', at: '1 s' }), 'unknownWord starter.faults.0.phase'],
  ['a pole welded and dead', faults(welded, { ...welded, kind: 'dead pole' }), 'conflict starter.faults.1'],
  ['a fault twice', faults(welded, welded), 'conflict starter.faults.1'],
];

describe('refused, with that one problem and no other', () => {
  it.each([...supplyCases, ...machineCases, ...loadCases, ...starterCases])('%s', (_, changes, expected) => {
    expect(codesOf(minimalScenario(changes))).toEqual([expected]);
  });
});

it.each<[string, Group, string]>([
  [
    'a coupling without damping',
    { load: { inertia: '1 kg m^2', coupling: { stiffness: '20 kN m/rad' } } },
    'oscillation grows',
  ],
  ['an impedance of 6', { supply: { transformer: { ...transformer, impedance: 6 } } }, '`6 %`'],
  ['a self-locking gear', { load: { gear: { ...gear, backwardEfficiency: 0 } } }, 'above 0 %'],
  ['a table that is too short', table(undefined, ['0 rpm', '8 N m'], ['1740 rpm', '42 N m']), '2160 rpm'],
  [
    'a table that is too short behind a gear',
    { load: { gear, ...(table(undefined, ['0 rpm', '8 N m'], ['180 rpm', '42 N m']).load as Group) } },
    '216 rpm',
  ],
])('%s is answered with what would be right', (_, changes, words) => {
  expect(problemsOf(minimalScenario(changes))[0]?.expected).toContain(words);
});

it('a curve that the circuit contradicts is placed at its line', () => {
  const text = JSON.stringify(
    minimalScenario(main({ voltage: '200 V', current: '9 A' }, { voltage: '201 V', current: '60 A' })),
    null,
    1,
  );
  const line = text.split('\n').findIndex((one) => one.includes('201 V'));
  const [problem] = problemsOf(text);
  expect(problem?.path).toBe('machine.saturation.main.1');
  // The point begins at the brace on the line before its voltage.
  expect(problem?.line).toBe(line);
});

it('elements that are wrong in several places come with all their problems at once', () => {
  const scenario = minimalScenario({
    supply: { transformer: { ...transformer, impedance: 6 }, cable: { length: '80 m' } },
    machine: { ironLoss: 350, temperature: { winding: '110 degC' } },
    load: { gear: { ratio: 10 }, coupling: { stiffness: '20 N m' } },
    starter: { plugConnection: 'star', faults: [{ kind: 'fire' }] },
  });
  expect(codesOf(scenario)).toEqual([
    'outOfRange supply.transformer.impedance',
    'conflict supply.cable',
    'missingUnit machine.ironLoss',
    'missingKey machine.temperature.resistancesAt',
    'missingKey load.gear.efficiency',
    'wrongUnit load.coupling.stiffness',
    'missingKey load.coupling.damping',
    'unknownWord starter.faults.0.kind',
    'conflict load.inertia',
    'conflict starter.plugConnection',
  ]);
});
