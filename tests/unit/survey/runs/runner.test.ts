import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../../../src/estimate/parseScenario.ts';
import type { MetricKey } from '../../../../src/measure/metric.ts';
import { simulate } from '../../../../src/measure/simulate.ts';
import { judgedAlone } from '../../../../src/survey/judgedAlone.ts';
import { endsOf } from '../../../../src/survey/runs/endsOf.ts';
import { runner } from '../../../../src/survey/runs/runner.ts';
import { scenarioOfRun } from '../../../../src/survey/runs/scenarioOfRun.ts';
import type { Survey } from '../../../../src/survey/spec/survey.ts';
import { shortRun } from '../../../support/shortRun.ts';
import { between, surveyOf } from './numberFields.ts';

const METRICS: readonly MetricKey[] = ['plugMinimumTorque', 'plugPeakCurrent', 'stopTimeFromTouch'];
const alone = (survey: Survey, values: readonly number[]) => parseScenario(scenarioOfRun(survey, values));

describe('a row of a run', () => {
  const fields = [between('supply.angle', 'deg', 0, 360), between('load.inertia', 'kg m^2', 0.04, 0.06)];

  it('that ended well has the values as they were given and the metrics of simulate, to the last bit', () => {
    const survey = surveyOf(shortRun(), fields, { metrics: METRICS });
    const run = runner(survey);
    for (const values of [
      [1 / 3, 0.05123456789],
      [270.1, 0.04],
    ]) {
      const { metrics } = simulate(alone(survey, values));
      const row = run(17, values);
      expect(row).toStrictEqual({
        run: 17,
        values,
        status: 'good',
        reason: null,
        metrics: METRICS.map((key) => metrics[key].value),
        verdict: null,
      });
      expect(row.metrics.every((value) => Number.isFinite(value))).toBe(true);
    }
  });

  it('that lacks what is measured has null in its place, and is good', () => {
    const started = shortRun(['  - { at: 0.35 s, do: plug }\n', '']);
    const survey = surveyOf(started, fields, { metrics: ['stopTimeFromTouch', 'startTime'] });
    const { status, metrics } = runner(survey)(0, [10, 0.05]);
    expect({ status, stop: metrics[0] }).toEqual({ status: 'good', stop: null });
    expect(metrics[1]).toBeGreaterThan(0);
  });

  it('whose values contradict each other is refused with what is wrong, and nothing is run', () => {
    const speeds = [
      between('starter.zeroSpeedSwitch.dropOutSpeed', 'rpm', 40, 110),
      between('starter.zeroSpeedSwitch.pickUpSpeed', 'rpm', 65, 200),
    ];
    const survey = surveyOf(shortRun(), speeds, { metrics: METRICS, verdict: true });
    const row = runner(survey)(3, [100, 70]);
    expect(row).toStrictEqual({
      run: 3,
      values: [100, 70],
      status: 'refused',
      reason: expect.stringContaining('dropOutSpeed: is not below the pick-up speed'),
      metrics: [null, null, null],
      verdict: null,
    });
  });

  it('whose machine could not be turning against its load is refused too, though only the simulation finds out', () => {
    const running = shortRun(
      ['actions:\n', 'initial: running forward\nactions:\n'],
      ['  - { at: 0 s, do: start forward }\n', ''],
    );
    // The breakdown torque is some three times the rated 50 N·m; 18 N·m of breakaway give way to what is varied.
    const load = between('load.torque.1.torque', 'N m', 5, 400);
    const run = runner(surveyOf(running, [load], { metrics: METRICS }));
    expect(run(0, [5]).status).toBe('good');
    const { status, reason, metrics } = run(1, [390]);
    expect({ status, metrics }).toEqual({ status: 'refused', metrics: [null, null, null] });
    expect(reason).toContain('cannot drive this load');
  });

  it('whose contactors short the lines has failed, and no figure of it is taken down', () => {
    const quick = [
      between('starter.closingTime', 'ms', 9, 18),
      between('starter.changeoverDelay', 'ms', 0.5, 12),
    ];
    const survey = surveyOf(shortRun(), quick, { metrics: METRICS });
    const run = runner(survey);
    const { status } = simulate(alone(survey, [9, 1]));
    expect(status.code).toBe('lineToLineShortCircuit');
    expect(run(0, [9, 1])).toStrictEqual({
      run: 0,
      values: [9, 1],
      status: 'failed',
      reason: status.message,
      metrics: [null, null, null],
      verdict: null,
    });
    expect(run(1, [18, 12]).status).toBe('good');
  });

  it('whose energy balance does not close is unbalanced, and no figure of it is taken down', () => {
    const tolerance = [between('solver.relativeTolerance', '', 1e-9, 1e-3)];
    const survey = surveyOf(shortRun(), tolerance, { metrics: METRICS });
    const { status, ledger } = simulate(alone(survey, [1e-3]));
    expect(status.code).toBe('finished');
    // The limit of src/measure/warnings.ts, one part in a million of the throughput.
    expect(ledger.residual).toBeGreaterThan(1e-6);
    const row = runner(survey)(5, [1e-3]);
    expect(row).toMatchObject({ run: 5, values: [1e-3], status: 'unbalanced', metrics: [null, null, null] });
    expect(row.reason).toContain(ledger.residual.toExponential(1));
    expect(runner(survey)(5, [1e-8])).toMatchObject({ status: 'good', reason: null });
  });
});

it('rows do not depend on the order of the runs, nor on what was run before', () => {
  const fields = [
    between('load.inertia', 'kg m^2', 0.04, 0.06),
    between('machine.statorResistance', 'ohm', 0.5, 0.6),
    between('starter.closingTime', 'ms', 9, 18),
    between('starter.changeoverDelay', 'ms', 0.5, 12),
    between('starter.zeroSpeedSwitch.dropOutSpeed', 'rpm', 40, 150),
  ];
  const survey = surveyOf(shortRun(), fields, { metrics: METRICS });
  const list = [
    [0.05, 0.56, 18, 12, 60],
    [0.05, 0.56, 9, 1, 60],
    [0.05, 0.56, 18, 12, 149],
    [0.05, 0.51, 18, 12, 60],
    [0.041, 0.56, 18, 12, 60],
  ];
  const rows = list.map((values, run) => runner(survey)(run, values));
  expect(new Set(rows.map(({ status }) => status))).toEqual(new Set(['good', 'failed', 'refused']));
  const order = fc.shuffledSubarray([...list.keys(), ...list.keys()], { minLength: 5, maxLength: 8 });
  fc.assert(
    fc.property(order, (runs) => {
      const run = runner(survey);
      for (const k of runs) expect(run(k, list[k]!)).toStrictEqual(rows[k]);
    }),
    { seed: 20_240, numRuns: 6 },
  );
});

it('the verdict is that of judging the run by itself, whatever duty and inertia were judged before', () => {
  const fields = [
    between('duty.operationsPerHour', '', 1, 600),
    between('load.inertia', 'kg m^2', 0.04, 1),
    between('duty.runningTime', 'min', 0.01, 10),
  ];
  const survey = surveyOf(shortRun(), fields, { metrics: METRICS, verdict: true });
  const [rare, often, heavy] = [
    [12, 0.05, 3],
    [500, 0.05, 0.05],
    [12, 0.15, 3],
  ] as const;
  const judged = [rare, often, heavy].map((values) => {
    const { verdict } = judgedAlone(alone(survey, values), false).suitability;
    return { outcome: verdict.outcome, decisive: verdict.decisive.join(' ') };
  });
  // Each of the changes changes the verdict: else nothing would be seen of a verdict kept too long.
  expect(new Set(judged.map((verdict) => JSON.stringify(verdict))).size).toBe(3);
  const run = runner(survey);
  for (const k of [0, 1, 0, 2, 1]) {
    const values = [rare, often, heavy][k]!;
    const row = run(k, values);
    expect(row.verdict).toEqual(judged[k]);
    const { metrics } = simulate(alone(survey, values));
    expect(row.metrics).toEqual(METRICS.map((key) => metrics[key].value));
  }
});

it('a failed run is judged all the same', () => {
  const quick = [
    between('starter.closingTime', 'ms', 9, 18),
    between('starter.changeoverDelay', 'ms', 0.5, 12),
  ];
  const survey = surveyOf(shortRun(), quick, { metrics: METRICS, verdict: true });
  const { status, verdict } = runner(survey)(0, [9, 1]);
  expect({ status, outcome: verdict?.outcome }).toEqual({
    status: 'failed',
    outcome: judgedAlone(alone(survey, [9, 1]), false).suitability.verdict.outcome,
  });
});

it('a field reaches from its smallest to its largest value, whatever the order of a list', () => {
  expect(endsOf({ kind: 'values', values: [3, -1, 2] })).toEqual([-1, 3]);
  expect(endsOf({ kind: 'triangular', from: 1, peak: 2, to: 4 })).toEqual([1, 4]);
});
