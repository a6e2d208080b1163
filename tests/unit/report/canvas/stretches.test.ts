import { expect, it } from 'vitest';
import type { RunResult } from '../../../../src/measure/result.ts';
import { stretchesOf } from '../../../../src/report/live/stretches.ts';
import { expectWithin } from '../../../support/tolerance.ts';
import { fakeScenario, fakeTrajectory, PARTING, REVERSE, TOUCH, ZERO } from '../fakeRun.ts';

/** s: the poles of one contactor touch within 2 ms of each other. */
const POLES = { absolute: 2e-3 };

const resultOf = (events = fakeTrajectory(fakeScenario()).events) =>
  ({ trajectory: { ...fakeTrajectory(fakeScenario()), events } }) as unknown as RunResult;
const spanOf = (label: string, result = resultOf()) =>
  stretchesOf(result).find((stretch) => stretch.label === label)!.span!;

it('a start, a change-over and the passage of zero speed are stretches beside the whole run', () => {
  expect(stretchesOf(resultOf()).map(({ label }) => label)).toEqual([
    'whole run',
    'start',
    'change-over',
    'zero speed',
  ]);
  expect(stretchesOf(resultOf())[0]!.span).toBeNull();
});

it('a change-over is shown from 5 ms before the parting to 50 ms after the touch', () => {
  const [from, to] = spanOf('change-over');
  expectWithin(from, PARTING - 0.005, POLES, 'from');
  expectWithin(to, REVERSE + 0.05, POLES, 'to');
});

it('a start is shown for 50 ms after the touch, zero speed 50 ms to both sides', () => {
  expectWithin(spanOf('start')[1], TOUCH + 0.05, POLES, 'end of the start');
  expectWithin(spanOf('zero speed')[0], ZERO - 0.05, POLES, 'before zero speed');
  expectWithin(spanOf('zero speed')[1], ZERO + 0.05, POLES, 'after zero speed');
});

it('no stretch reaches beyond the run', () => {
  const { tStart, tEnd } = resultOf().trajectory;
  for (const { span } of stretchesOf(resultOf())) {
    expect(span === null || (span[0] >= tStart && span[1] <= tEnd)).toBe(true);
  }
});

it('a run in which nothing closes has only itself', () => {
  expect(stretchesOf(resultOf([]))).toEqual([{ label: 'whole run', span: null }]);
});
