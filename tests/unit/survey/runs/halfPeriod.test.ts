import { expect, it } from 'vitest';
import { parseScenario } from '../../../../src/estimate/parseScenario.ts';
import { simulate } from '../../../../src/measure/simulate.ts';
import { shortRun } from '../../../support/shortRun.ts';
import { expectWithin } from '../../../support/tolerance.ts';

/** Of braking; what has a sign of its own, and what has none. */
const KEYS = [
  'plugMinimumTorque',
  'plugMaximumTorque',
  'plugPeakCurrent',
  'stopTimeFromTouch',
  'plugRotorHeat',
] as const;

// A machine whose windings are alike has an odd field: all voltages with the other sign give all currents with the other sign, and
// torques are products of two of them (any textbook on space vectors; from memory).
it('half a period later a plug stop has the same torques, times and heat, and a quarter later others', () => {
  const at = (angle: string) =>
    simulate(parseScenario(shortRun(['angle: 30 deg', `angle: ${angle}`]))).metrics;
  const [now, quarter, half] = [at('20 deg'), at('110 deg'), at('200 deg')];
  for (const key of KEYS) expectWithin(half[key].value!, now[key].value!, { relative: 1e-9 }, key);
  expect(Math.abs(quarter.plugMinimumTorque.value! / now.plugMinimumTorque.value! - 1)).toBeGreaterThan(0.01);
});
