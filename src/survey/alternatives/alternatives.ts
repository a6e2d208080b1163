import { crossings } from '../../measure/crossing.ts';
import { type Quadrature, quadratureOf } from '../../measure/quadrature.ts';
import type { RunResult } from '../../measure/result.ts';
import { simulate } from '../../measure/simulate.ts';
import { UP_TO_SPEED } from '../../measure/startMetrics.ts';
import { type StopFigures, stopFigures } from '../../measure/stopFigures.ts';
import { steadySpeed } from '../../shaft/steadySpeed.ts';
import { type Alternative, STOP_NAMES, type StopCost, type StopName } from './alternative.ts';
import { type CommandedRun, commandedRun } from './commandedRun.ts';
import { type CostBasis, type StopKindOfCost, stopCost } from './stopCost.ts';
import { type StopGoals, wayToStop } from './waysToStop.ts';

/** Where no longest stop is stated, direct current may take so many times as long as plugging. Assumed. */
const SLOWER_THAN_PLUGGING = 3;

const NO_COST: StopCost = { operationsPerHour: null, contactLife: null, wearsFirst: null };

/**
 * The same load stopped in every other way, each simulated with its own sequence of contactors, beside the plugging of the run.
 * Faults of the run are left out; what its control circuit made of buttons is commanded.
 *
 * @param result of a run with a stop
 * @param resistorForLimits smallest line resistor with which plugging meets its limits, Ω; null: none was looked for
 * @returns empty where the run has no stop
 */
export function alternatives(
  result: RunResult,
  basis: CostBasis,
  resistorForLimits: number | null = null,
): readonly Alternative[] {
  const run = commandedRun(result);
  if (run === null) return [];
  const done = result.trajectory.commands.find(({ at }) => at === run.command)?.do;
  const plugging = done === 'startForward' || done === 'startReverse' ? done : 'plug';
  const unset: StopGoals = {
    plugging,
    ratedCurrent: result.rated.current,
    wantedTime: 0,
    coastingTime: null,
    resistorForLimits,
  };
  const plug = alternative('plug', run, unset, basis);
  const coast = alternative('coast', run, unset, basis);
  const longest = result.scenario.limits?.stopTime;
  const goals: StopGoals = {
    ...unset,
    coastingTime: coast.figures?.reachesZero === true ? coast.figures.time : null,
    wantedTime:
      typeof longest === 'number'
        ? longest
        : SLOWER_THAN_PLUGGING * (plug.figures?.time ?? Number.POSITIVE_INFINITY),
  };
  return STOP_NAMES.map((name) => {
    if (name === 'plug') return plug;
    return name === 'coast' ? coast : alternative(name, run, goals, basis);
  });
}

function alternative(name: StopName, run: CommandedRun, goals: StopGoals, basis: CostBasis): Alternative {
  const way = wayToStop(name, run, goals);
  const none = { name, figures: null, cost: NO_COST, reversalTime: null, result: null };
  if ('missing' in way) return { ...none, setting: '', missing: way.missing };
  const result = simulate(way.scenario);
  if (!result.usable) return { ...none, setting: way.setting, result, missing: result.status.message };
  const quadrature = quadratureOf(result.trajectory);
  const figures = stopFigures(quadrature, run.command);
  return {
    name,
    setting: way.setting,
    figures,
    cost: stopCost(result, figures, kindOf(name, goals), basis, name === 'plug'),
    reversalTime: reversalTime(quadrature, figures, run.direction),
    result,
    missing: null,
  };
}

function kindOf(name: StopName, { plugging }: StopGoals): StopKindOfCost {
  if (name === 'directCurrent') return 'injects';
  if (name === 'coast' || name === 'mechanicalBrake' || name === 'throughStop') return 'coasts';
  return plugging === 'plug' ? 'plugs' : 'reverses';
}

/** From the command to 95 % of the steady speed of the other direction, s. */
function reversalTime(quadrature: Quadrature, { command }: StopFigures, direction: 1 | -1): number | null {
  const { trajectory } = quadrature;
  const target = steadySpeed(trajectory.scenario, direction === 1 ? -1 : 1);
  if (target === null || Math.sign(target) === direction) return null;
  const way = target > 0 ? 'up' : 'down';
  const [reached] = crossings(quadrature, 'speed', UP_TO_SPEED * target, way, command, trajectory.tEnd);
  return reached === undefined ? null : reached - command;
}
