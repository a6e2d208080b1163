import { coastDown } from '../../assess/stop/coastDown.ts';
import { contradiction } from '../../scenario/contradiction.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { synchronousSpeed } from '../../scenario/synchronousSpeed.ts';
import { holdLimits } from '../../shaft/holdLimits.ts';
import { type Shaft, shaftOf } from '../../shaft/shaft.ts';
import { offBy, TOLERANCES } from './tolerances.ts';

/**
 * Refuses a set that the procedure is not for: one whose load drives it once the motor is off, so that it neither runs down nor stands
 * still by itself, and one with something broken, for what is expected is that of a whole set.
 *
 * @throws ScenarioError for either
 */
export function assertSuitable(scenario: Scenario): void {
  const { starter, load } = scenario;
  const faults = starter.faults?.length ?? 0;
  if (faults > 0)
    throw contradiction(
      'starter.faults',
      faults === 1 ? '1 fault' : `${faults} faults`,
      'what a reading should be is that of a whole set, so that nothing is predicted for one with a fault',
      'the same file without `faults`',
    );
  if (runsAway(scenario))
    throw contradiction(
      'load.torque',
      load.torques.map(({ kind }) => kind).join(', '),
      'a load that pulls when the motor is off runs away: friction, at the lower end of its tolerance, does not stop and hold it in both directions',
      'a flywheel with its friction: the procedure is for a flywheel',
    );
}

/** Part of the load at rest has a direction of its own, as a weight has. */
export function pullsOneWay(shaft: Shaft): boolean {
  return holdLimits({ ...shaft, coupling: null }, 0).center !== 0;
}

/** From synchronous speed in either direction down to rest, with as little friction as its tolerance allows. */
function runsAway(scenario: Scenario): boolean {
  const { machine, supply } = scenario;
  const speed = synchronousSpeed(supply.frequency, 2 * machine.polePairs);
  return TOLERANCES.filter(({ key }) => key === 'friction').some((tolerance) => {
    const shaft = shaftOf(offBy(scenario, tolerance, -1));
    return [speed, -speed].some((omega) => coastDown(shaft, omega).outcome === 'driven');
  });
}
