import { describe, expect, it } from 'vitest';
import { METRIC_KEYS, simulate } from '../../src/index.ts';
import { compareRuns } from '../support/compareRuns.ts';
import { COMPARISON_RUNS } from './comparisonRuns.ts';
import { runPhaseVariableModel } from './phaseVariableModel.ts';

describe('space vectors and phase variables give the same figures', () => {
  it.each(COMPARISON_RUNS.map((scenario) => ({ scenario, title: scenario.title })))(
    'for $title',
    { timeout: 30_000 },
    ({ scenario }) => {
      const ours = simulate(scenario).metrics;
      const theirs = runPhaseVariableModel(scenario).metrics;
      expect(Object.keys(theirs).sort()).toEqual([...METRIC_KEYS].sort());
      const disagreements = compareRuns(scenario, ours, theirs).filter(({ excess }) => excess > 1);
      expect(disagreements.map(({ words }) => words)).toEqual([]);
    },
  );
});
