import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { assertScenario } from '../../../src/scenario/assertScenario.ts';
import type { Scenario } from '../../../src/scenario/scenario.ts';
import { ScenarioError } from '../../../src/scenario/scenarioError.ts';
import { WITH_EVERY_KEY } from './everyKey.ts';
import { parseScenario as read } from './minimalScenario.ts';

const example = read(readFileSync('examples/engineer/may-this-belt-be-plugged.yaml', 'utf8'));

function problemsOf(scenario: Scenario): string[] {
  try {
    assertScenario(scenario);
    return [];
  } catch (error) {
    if (error instanceof ScenarioError) return error.problems.map((problem) => problem.path);
    throw error;
  }
}

const { machine, starter, load, solver } = example;
const IMPOSSIBLE: readonly (readonly [string, Scenario, string])[] = [
  ['a negative resistance', { ...example, machine: { ...machine, Rs: -1 } }, 'machine.Rs'],
  ['NaN', { ...example, machine: { ...machine, Lm: Number.NaN } }, 'machine.Lm'],
  ['no cage', { ...example, machine: { ...machine, cages: [] } }, 'machine.cages'],
  [
    'a change-over delay below zero, as a dead time that is too short gives',
    { ...example, starter: { ...starter, changeoverDelay: -1e-3 } },
    'starter.changeoverDelay',
  ],
  [
    'no inertia at all',
    { ...example, machine: { ...machine, inertia: 0 }, load: { ...load, inertia: 0 } },
    'machine.inertia',
  ],
  ['actions out of order', { ...example, actions: [...example.actions].reverse() }, 'actions.1.at'],
  [
    'a cable that gains energy',
    { ...example, supply: { ...example.supply, cable: { resistance: -1, inductance: 0 } } },
    'supply.cable.resistance',
  ],
  [
    'a magnetising curve of one point',
    { ...example, machine: { ...machine, mainSaturation: [{ current: 1, flux: 1 }] } },
    'machine.mainSaturation',
  ],
  [
    'a magnetising curve that turns back',
    {
      ...example,
      machine: {
        ...machine,
        mainSaturation: [
          { current: 1, flux: 1 },
          { current: 2, flux: 0.9 },
        ],
      },
    },
    'machine.mainSaturation.1',
  ],
  [
    'an inductance that grows with current',
    {
      ...example,
      machine: {
        ...machine,
        mainSaturation: [
          { current: 1, flux: 0.5 },
          { current: 2, flux: 1.1 },
        ],
      },
    },
    'machine.mainSaturation.1',
  ],
  [
    'a leakage path too many',
    { ...example, machine: { ...machine, leakageSaturation: { stator: null, cages: [null, null] } } },
    'machine.leakageSaturation.cages',
  ],
  [
    'more than all remaining',
    {
      ...example,
      machine: {
        ...machine,
        leakageSaturation: { stator: { current: 1, remaining: 1.1 }, cages: [null] },
      },
    },
    'machine.leakageSaturation.stator.remaining',
  ],
  [
    'iron without resistance',
    { ...example, machine: { ...machine, core: { R: 0, L: 1 } } },
    'machine.core.R',
  ],
  [
    'windage that drives',
    { ...example, machine: { ...machine, mechanicalLoss: { friction: 0, windage: -1 } } },
    'machine.mechanicalLoss.windage',
  ],
  [
    'a starting step without end',
    {
      ...example,
      machine: {
        ...machine,
        rotorResistors: { starting: [{ resistance: 1, duration: Infinity }], plugging: 0 },
      },
    },
    'machine.rotorResistors.starting.0.duration',
  ],
  [
    'a gear that makes power',
    { ...example, load: { ...load, gear: { ratio: 1, efficiency: 0.9, backwardEfficiency: 1.5 } } },
    'load.gear.backwardEfficiency',
  ],
  [
    'a coupling with negative damping',
    { ...example, load: { ...load, coupling: { stiffness: 1, damping: -1, backlash: 0 } } },
    'load.coupling.damping',
  ],
  [
    'a table that descends',
    {
      ...example,
      load: {
        ...load,
        torques: [
          {
            kind: 'table',
            points: [
              { speed: 0, torque: 1 },
              { speed: 0, torque: 2 },
            ],
            mirrored: true,
          },
        ],
      },
    },
    'load.torques.0.points.1.speed',
  ],
  [
    'constant power from standstill',
    { ...example, load: { ...load, torques: [{ kind: 'constantPower', power: 1, baseSpeed: 0 }] } },
    'load.torques.0.baseSpeed',
  ],
  [
    'a negative line resistor',
    {
      ...example,
      starter: {
        ...starter,
        lineResistors: { resistance: -1, closingTime: 0, openingTime: 0, bypassAfter: null },
      },
    },
    'starter.lineResistors.resistance',
  ],
  [
    'star plugging of a star machine',
    { ...example, starter: { ...starter, plugConnection: 'star' } },
    'starter.plugConnection',
  ],
  [
    'a phase lost before the beginning',
    { ...example, starter: { ...starter, faults: [{ kind: 'lostPhase', phase: 'A', from: -1 }] } },
    'starter.faults.0.from',
  ],
  ['an endless end time', { ...example, solver: { ...solver, endTime: Infinity } }, 'solver.endTime'],
];

it.each(WITH_EVERY_KEY)('what a file with %s gives is accepted', (_, group) => {
  expect(() => assertScenario(read(group))).not.toThrow();
});

describe('a scenario object put together by a program', () => {
  it.each(IMPOSSIBLE)('with %s is refused by its path', (_, scenario, path) => {
    expect(problemsOf(scenario)).toEqual([path]);
  });

  it('is refused with all its problems at once', () => {
    const broken = {
      ...example,
      machine: { ...machine, Rs: -1, Lls: 0 },
      starter: { ...starter, openingTime: -1 },
    };
    expect(problemsOf(broken)).toEqual(['machine.Rs', 'machine.Lls', 'starter.openingTime']);
  });
});
