import { expect, it } from 'vitest';
import { rememberingEstimator } from '../../../../src/survey/spec/rememberingEstimator.ts';

it('a machine is estimated once, and another one anew', () => {
  const asked: unknown[] = [];
  // Stands for any estimator: only how often it is asked matters.
  const count = (about: unknown) => ({ of: asked.push(about) }) as never;
  const estimator = rememberingEstimator({ fromNameplate: count, fromTests: count });
  const machine = (power: number) => ({ power }) as never;
  const first = estimator.fromNameplate(machine(1));
  expect(estimator.fromNameplate(machine(1))).toBe(first);
  expect(estimator.fromNameplate(machine(2))).not.toBe(first);
  expect(estimator.fromTests(machine(1))).not.toBe(first);
  expect(asked).toHaveLength(3);
  for (let power = 3; power < 80; power++) estimator.fromNameplate(machine(power));
  expect(estimator.fromNameplate(machine(1))).not.toBe(first);
});
