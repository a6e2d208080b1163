import { describe, expect, it } from 'vitest';
import { METRIC_KEYS, simulate } from '../../src/index.ts';
import { compareRuns } from '../support/compareRuns.ts';
import { COMPARISON_RUNS } from './comparisonRuns.ts';
import { ELEMENT_RUNS } from './elementRuns.ts';
import { runPhaseVariableModel } from './phaseVariableModel.ts';
import type { ScenarioShape } from './scenarioShape.ts';

const byTitle = (runs: readonly ScenarioShape[]) =>
  runs.map((scenario) => ({ scenario, title: scenario.title }));

/** Every metric of a run in both formulations that is further apart than allowed, in words. */
function disagreements(scenario: ScenarioShape): string[] {
  const ours = simulate(scenario).metrics;
  const theirs = runPhaseVariableModel(scenario).metrics;
  expect(Object.keys(theirs).sort()).toEqual([...METRIC_KEYS].sort());
  return compareRuns(scenario, ours, theirs)
    .filter(({ excess }) => excess > 1)
    .map(({ words }) => words);
}

describe('space vectors and phase variables give the same figures', () => {
  it.each(byTitle(COMPARISON_RUNS))('for $title', ({ scenario }) => {
    expect(disagreements(scenario)).toEqual([]);
  });

  it.each(byTitle(ELEMENT_RUNS))('for $title', ({ scenario }) => {
    expect(disagreements(scenario)).toEqual([]);
  });
});
