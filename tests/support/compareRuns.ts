import { METRIC_KEYS, type Metrics } from '../../src/index.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import type { IndependentMetrics } from '../independent/independentMetric.ts';
import { type Difference, differences, type Floors } from './disagreements.ts';

/** How far two sets of all metrics of one run are apart. */
export function compareRuns(
  scenario: Scenario,
  ours: Metrics,
  theirs: IndependentMetrics,
  floors?: Floors,
): Difference[] {
  const stiff = scenario.supply.sourceInductance === 0 && scenario.supply.sourceResistance === 0;
  return METRIC_KEYS.flatMap((key) => {
    // What stays the same has no time of its own: the voltage on a stiff supply, the creep of a shaft without load.
    const constant =
      (key === 'lowestTerminalVoltage' && stiff) ||
      (key === 'creepSpeed' && scenario.load.torques.length === 0);
    return differences(key, ours[key], theirs[key]!, !constant, floors);
  });
}
