import { writeFileSync } from 'node:fs';
import { afterAll, expect, it } from 'vitest';
import {
  extremeOf,
  judgement,
  mapOf,
  parseScenario,
  runner,
  type Survey,
  scenarioOfRun,
  simulate,
} from '../../src/index.ts';
import { randomStream } from '../../src/survey/draws/randomStream.ts';
import { exampleText } from '../support/examples.ts';
import { made, surveyOn } from '../unit/survey/real/made.ts';
import { gridAround, rangesOf, worstPlug } from '../unit/survey/real/worstCase.ts';

const RANDOM_RUNS = 10_000;
const SEARCH_RUNS = 600;
const SEED = 20_240;

/** Of the torque: what a search of 600 runs leaves to be found. */
const LEFT = 1e-6;

const result: string[] = [];

afterAll(() => {
  const head = ['# Surveys of real runs', '', 'Written by `npm run test:long`.', ''];
  const text = [...head, ...result.map((line) => `- ${line}`), ''];
  writeFileSync(new URL('surveys.md', import.meta.url), text.join('\n'));
});

/** Even over the ranges of the survey's fields. */
function randomValues(survey: Survey, run: number): number[] {
  const next = randomStream(SEED, run);
  return rangesOf(survey).map(([from, to]) => from + next() * (to - from));
}

it('the worst plug that a search finds is not beaten by a dense grid around it or by random runs', () => {
  const survey = worstPlug(exampleText('may-this-belt-be-plugged.yaml'), SEARCH_RUNS);
  const { row, value } = extremeOf(survey, made(survey))!;
  const { metrics } = simulate(parseScenario(scenarioOfRun(survey, row.values)));
  expect(metrics.plugMinimumTorque.value).toBe(value);
  const run = runner(survey);
  const smallest = (points: Iterable<readonly number[]>) => {
    let best = 0;
    let k = 0;
    for (const values of points) best = Math.min(best, run(k++, values).metrics[0] ?? 0);
    return best;
  };
  const steps = [-0.04, -0.02, -0.01, -0.005, 0, 0.005, 0.01, 0.02, 0.04];
  const grid = smallest(gridAround(survey, row.values, steps));
  const random = smallest(
    (function* () {
      for (let k = 0; k < RANDOM_RUNS; k++) yield randomValues(survey, k);
    })(),
  );
  const words = (torque: number) => `${torque.toFixed(3)} N·m`;
  result.push(
    `worst plug over instant of closing, dead time and inertia, ${SEARCH_RUNS} runs: ${words(value)}; ` +
      `best of ${steps.length ** 3} grid points around it: ${words(grid)}; best of ${RANDOM_RUNS} random runs: ${words(random)}`,
  );
  for (const other of [grid, random]) expect(other).toBeGreaterThanOrEqual(value - LEFT * Math.abs(value));
});

it('the verdict of a limit map changes between the two inertias that hold the limit found by bisection', () => {
  // Plugged so late that every inertia of the map is up to speed: the search for the limit gives each the time it needs.
  const text = exampleText('may-this-belt-be-plugged.yaml').replace(
    '{ at: 1 s, do: plug }',
    '{ at: 4 s, do: plug }',
  );
  const { extremes } = judgement(parseScenario(text), { cageIsFitted: false, extremes: true });
  const limit = extremes!.find(({ name }) => name === 'largestInertia')!.boundary!;
  expect(limit.kind).toBe('found');
  const survey = surveyOn(text, {
    ask: 'limit map',
    metrics: ['stopTimeFromTouch'],
    vary: [
      { field: 'load.inertia', from: '0.04 kg m^2', to: '0.4 kg m^2', count: 16, spacing: 'logarithmic' },
      { field: 'duty.operationsPerHour', values: [12] },
    ],
  });
  const rows = made(survey);
  // What cannot be judged does not bind the search: its limit is where the map says that plugging does not suit.
  const failing = mapOf(survey, () => rows)!.lines![0]!.changes.filter(
    ({ after }) => after.outcome === 'notSuitable',
  );
  expect(failing).toHaveLength(1);
  const [{ from, to, before, after }] = failing as [(typeof failing)[number]];
  result.push(
    `limit map: ${before.outcome} at ${from.toFixed(4)}, ${after.outcome} at ${to.toFixed(4)} kg·m² (${after.decisive}); ` +
      `bisection: ${limit.value!.toFixed(4)} to ${limit.beyond!.toFixed(4)} kg·m² (${limit.binding.join(', ')})`,
  );
  expect(from).toBeLessThanOrEqual(limit.beyond!);
  expect(to).toBeGreaterThanOrEqual(limit.value!);
});
