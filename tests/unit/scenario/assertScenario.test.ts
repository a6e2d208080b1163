import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseScenario, type Scenario, ScenarioError, simulate } from '../../../src/index.ts';

const example = parseScenario(readFileSync('examples/plugs-comfortably.yaml', 'utf8'));

function problemsOf(scenario: Scenario): string[] {
  try {
    simulate(scenario);
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
  ['an endless end time', { ...example, solver: { ...solver, endTime: Infinity } }, 'solver.endTime'],
];

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
