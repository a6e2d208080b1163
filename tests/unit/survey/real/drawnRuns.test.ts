import { expect, it } from 'vitest';
import { sensitivityOf } from '../../../../src/survey/spread/sensitivity.ts';
import { summaryOf } from '../../../../src/survey/spread/summary.ts';
import { shortRun } from '../../../support/shortRun.ts';
import { made, surveyOn } from './made.ts';

it('the quantiles of random runs are those of the sorted values', () => {
  const survey = surveyOn(shortRun(), {
    ask: 'random',
    runs: 40,
    sequence: 'pseudo',
    metrics: ['plugPeakCurrent', 'stopTimeFromTouch'],
    vary: [
      { field: 'supply.angle', distribution: 'uniform', from: '0 deg', to: '360 deg' },
      { field: 'load.inertia', distribution: 'normal', mean: '1 times', deviation: '0.1 times' },
    ],
  });
  const rows = made(survey);
  const { byStatus, metrics } = summaryOf(survey, () => rows);
  expect(byStatus.good).toBe(40);
  for (const [m, { quantiles, smallest, largest }] of metrics.entries()) {
    const sorted = rows.map((row) => row.metrics[m]!).sort((a, b) => a - b);
    expect([smallest!.value, largest!.value]).toEqual([sorted[0], sorted.at(-1)]);
    expect(sorted[0]).toBeLessThan(sorted.at(-1)!);
    // The mean of the values on both sides of the step of the empirical distribution, where the share falls on a step: definition 2 of
    // Hyndman and Fan, Sample quantiles in statistical packages, The American Statistician 50 (1996) (from memory).
    for (const { percent, value } of quantiles) {
      const rank = (percent * sorted.length) / 100;
      const [below, above] = [sorted[Math.ceil(rank) - 1]!, sorted[Math.floor(rank)]!];
      expect(value, `${percent} %`).toBe((below + above) / 2);
    }
    expect(quantiles.map(({ percent }) => percent)).toEqual([1, 5, 25, 50, 75, 90, 95, 99]);
  }
});

it('of two fields one that no run feels has no share in the spread, and the other has all of it', () => {
  const survey = surveyOn(shortRun(), {
    ask: 'sensitivity',
    samples: 24,
    metrics: ['stopTimeFromTouch'],
    vary: [
      // What surrounds the motor enters the judgement of its temperature alone.
      { field: 'thermal.ambient', distribution: 'uniform', from: '20 degC', to: '45 degC' },
      { field: 'load.inertia', distribution: 'uniform', from: '0.7 times', to: '1.3 times' },
    ],
  });
  const rows = made(survey);
  const { fields, used } = sensitivityOf(survey, () => rows)!.metrics[0]!;
  expect(used).toBe(24);
  const [ambient, inertia] = fields.map(({ first, total }) => [first!, total!]);
  for (const index of ambient!) {
    expect(Math.abs(index.value)).toBeLessThan(1e-9);
    expect(index.low).toBeLessThanOrEqual(1e-9);
    expect(index.high).toBeGreaterThanOrEqual(-1e-9);
  }
  for (const index of inertia!) {
    expect(index.low).toBeLessThanOrEqual(1);
    expect(index.high).toBeGreaterThanOrEqual(1);
    expect(index.value).toBeGreaterThan(0.7);
  }
});
