import { operationsOf } from '../../measure/operations.ts';
import type { RunResult } from '../../measure/result.ts';
import { contradiction } from '../../scenario/contradiction.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { commandedRun } from '../alternatives/commandedRun.ts';

/** The set as the procedure uses it: contactors moved by commands, nothing broken, free to be started, plugged and reversed. */
export interface Bench {
  /** Without actions, control circuit and faults. */
  readonly scenario: Scenario;
  readonly direction: 1 | -1;
  /** The scenario plugs or reverses, so that the set is meant for it. */
  readonly plugs: boolean;
}

/** Loosest tolerance of the runs: readings are good to per cents. */
const RUN_TOLERANCE = 1e-6;

/**
 * The set that a run shows.
 *
 * @throws ScenarioError where nothing is started, plugged or reversed
 */
export function benchOf(result: RunResult): Bench {
  const { scenario, trajectory } = result;
  const { start, reversal } = operationsOf(trajectory);
  if (start === null && reversal === null)
    throw contradiction(
      'actions',
      `${scenario.actions.length} actions`,
      'start nothing, plug nothing and reverse nothing, so that there is nothing for a laboratory to measure',
      'at least `do: start forward`; for the whole procedure a `do: plug` after it',
    );
  const stopped = commandedRun(result)?.scenario.starter;
  const { control: _, faults: __, ...plain } = scenario.starter;
  const relativeTolerance = Math.max(RUN_TOLERANCE, scenario.solver.relativeTolerance);
  return {
    scenario: {
      ...scenario,
      starter: stopped ?? plain,
      actions: [],
      solver: { ...scenario.solver, relativeTolerance, endTime: 'auto' },
    },
    direction: start?.direction ?? reversal?.direction ?? 1,
    plugs: reversal !== null,
  };
}

/** From rest to running. */
export function startOf(scenario: Scenario, direction: 1 | -1): Scenario {
  return {
    ...scenario,
    initial: 'rest',
    actions: [{ at: 0, do: direction === 1 ? 'startForward' : 'startReverse' }],
  };
}

/** From running to rest; the zero-speed switch ends it. */
export function plugStopOf(scenario: Scenario, direction: 1 | -1): Scenario {
  return { ...scenario, initial: runningIn(direction), actions: [{ at: 0, do: 'plug' }] };
}

/** From running to running the other way. */
export function reversalOf(scenario: Scenario, direction: 1 | -1): Scenario {
  return {
    ...scenario,
    initial: runningIn(direction),
    actions: [{ at: 0, do: direction === 1 ? 'startReverse' : 'startForward' }],
  };
}

/** The same with phase A elsewhere at t = 0. */
export function atAngle(scenario: Scenario, angle: number): Scenario {
  return { ...scenario, supply: { ...scenario.supply, angle } };
}

function runningIn(direction: 1 | -1): Scenario['initial'] {
  return direction === 1 ? 'runningForward' : 'runningReverse';
}
