import { expect, it } from 'vitest';
import { parseScenario } from '../../../../src/estimate/parseScenario.ts';
import { simulate } from '../../../../src/measure/simulate.ts';
import { runner } from '../../../../src/survey/runs/runner.ts';
import { scenarioOfRun } from '../../../../src/survey/runs/scenarioOfRun.ts';
import { extremeOf } from '../../../../src/survey/worst/extremeOf.ts';
import { shortRun } from '../../../support/shortRun.ts';
import { made } from './made.ts';
import { gridAround, worstPlug } from './worstCase.ts';

/** Of the torque: far below what a search of the ranges alone leaves, 2e-5, and above what the last steps do. */
const LEFT = 1e-6;

it('the worst plug that a search finds is not beaten by a grid around it, and its scenario gives it to the last bit', () => {
  const survey = worstPlug(shortRun(), 300);
  const { row, value } = extremeOf(survey, made(survey))!;
  const { metrics } = simulate(parseScenario(scenarioOfRun(survey, row.values)));
  expect(metrics.plugMinimumTorque.value).toBe(value);
  const run = runner(survey);
  const around = gridAround(survey, row.values, [-0.02, -0.005, 0.005, 0.02]).map(
    (values, k) => run(k, values).metrics[0]!,
  );
  expect(around).toHaveLength(64);
  expect(Math.min(...around)).toBeGreaterThanOrEqual(value - LEFT * Math.abs(value));
  // The grid sees a slope: it is not flat all around.
  expect(Math.max(...around)).toBeGreaterThan(value + 1e-3 * Math.abs(value));
});
