import type { Survey } from '../../../../src/survey/spec/survey.ts';
import { surveyOn } from './made.ts';

/** The most negative torque of a plug over the instant of closing, the dead time and the inertia. */
export function worstPlug(scenario: string, runs: number): Survey {
  return surveyOn(scenario, {
    ask: 'worst case',
    metric: 'plugMinimumTorque',
    seek: 'smallest',
    runs,
    metrics: ['plugMinimumTorque'],
    vary: [
      { field: 'supply.angle', from: '0 deg', to: '360 deg' },
      { field: 'starter.changeoverDelay', from: '0.8 times', to: '1.2 times' },
      { field: 'load.inertia', from: '0.8 times', to: '1.2 times' },
    ],
  });
}

/** Smallest and largest value of each field. */
export function rangesOf({ fields }: Survey): [number, number][] {
  return fields.map(({ spread }) => {
    if (spread.kind !== 'uniform') throw new Error('not of this survey');
    return [spread.from, spread.to];
  });
}

/** The points of a grid around a point, within the ranges: `steps` each way, each a share of the range. */
export function gridAround(survey: Survey, point: readonly number[], steps: readonly number[]): number[][] {
  return rangesOf(survey).reduce<number[][]>(
    (points, [from, to], i) =>
      points.flatMap((start) =>
        steps.map((step) => [...start, Math.min(to, Math.max(from, point[i]! + step * (to - from)))]),
      ),
    [[]],
  );
}
