import { expect, it } from 'vitest';
import { parseScenario } from '../../../../src/estimate/parseScenario.ts';
import { simulate } from '../../../../src/measure/simulate.ts';
import { runner } from '../../../../src/survey/runs/runner.ts';
import { scenarioOfRun } from '../../../../src/survey/runs/scenarioOfRun.ts';
import { extremeOf } from '../../../../src/survey/worst/extremeOf.ts';
import { shortRun } from '../../../support/shortRun.ts';
import { made } from './made.ts';
import { gridAround, worstPlug } from './worstCase.ts';

/**
 * Of the torque: what the search leaves to be found after so few runs. It is seen on the grid's points, which lie a hundredth and a
 * twentieth of each range away from the extreme.
 */
const LEFT = 2e-3;

it('the worst plug that a search finds is not beaten by a grid around it, and its scenario gives it to the last bit', () => {
  const survey = worstPlug(shortRun(), 192);
  const { row, value } = extremeOf(survey, made(survey))!;
  const { metrics } = simulate(parseScenario(scenarioOfRun(survey, row.values)));
  expect(metrics.plugMinimumTorque.value).toBe(value);
  const run = runner(survey);
  const around = gridAround(survey, row.values, [-0.05, -0.01, 0.01, 0.05]).map(
    (values, k) => run(k, values).metrics[0]!,
  );
  expect(around).toHaveLength(64);
  expect(Math.min(...around)).toBeGreaterThanOrEqual(value - LEFT * Math.abs(value));
  // The grid sees a slope: it is not flat all around.
  expect(Math.max(...around)).toBeGreaterThan(value + LEFT * Math.abs(value));
});
