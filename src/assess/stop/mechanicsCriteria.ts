import type { RunResult } from '../../measure/result.ts';
import { againstGiven, type Found, type Question } from '../againstLimit.ts';
import type { Criterion } from '../criterion.ts';
import { STANDARD_LIMITS } from '../standardLimits.ts';
import { largestInRun } from './largestInRun.ts';
import { shaftTorque } from './shaftTorque.ts';

/** Criteria of shaft and load: torque between motor and load, and what the load feels of the deceleration. */
export function mechanicsCriteria(result: RunResult): readonly Criterion[] {
  const { scenario } = result;
  const g = STANDARD_LIMITS.gravity.value;
  const found = loadDeceleration(result);
  return [
    shaftTorque(result),
    againstGiven(question('deceleration', 'deceleration of the load'), found, scenario, 'deceleration'),
    againstGiven(
      question('tipping', 'deceleration of the load against tipping'),
      found,
      scenario,
      'tippingRatio',
      (ratio) => g / ratio,
    ),
    againstGiven(
      question('sliding', 'deceleration of the load against sliding'),
      found,
      scenario,
      'slidingFriction',
      (friction) => friction * g,
    ),
  ];
}

function question(key: Question['key'], name: string): Question {
  const remark =
    'mean over the worst supply period from the command on, in either direction; single swings of torque are shorter';
  return { key, name, unit: 'm/s²', limitIs: 'most', required: false, remark };
}

/**
 * Largest change of the load's speed in any one supply period from the reversing command to the next action, over that period,
 * at the radius given on the load's own shaft, m/s². The torque swings with the supply; its mean over a period moves the load.
 */
export function loadDeceleration({ trajectory, operations, scenario }: RunResult): Found {
  const { reversal } = operations;
  const radius = scenario.limits?.decelerationRadius ?? null;
  if (radius === null) return { missing: 'limits.decelerationRadius is missing' };
  if (reversal === null) return { missing: 'no plug or reversal takes place in this run' };
  const period = 1 / scenario.supply.frequency;
  const { ratio } = trajectory.shaft;
  const largest = largestInRun(
    trajectory,
    reversal.command + period,
    reversal.to,
    (t) => Math.abs(trajectory.at(t).loadSpeed - trajectory.at(t - period).loadSpeed) / period,
  );
  if (largest === null) return { missing: 'the run ends within one supply period of the command' };
  return { value: (largest / ratio) * radius };
}
