import { crossings } from '../../measure/crossing.ts';
import { type Quadrature, quadratureOf } from '../../measure/quadrature.ts';
import type { RunResult } from '../../measure/result.ts';
import { simulate } from '../../measure/simulate.ts';
import { UP_TO_SPEED } from '../../measure/startMetrics.ts';
import { type StopFigures, stopFigures } from '../../measure/stopFigures.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { ScenarioError } from '../../scenario/scenarioError.ts';
import { holdsUnpowered } from '../../shaft/coasting.ts';
import { steadySpeed } from '../../shaft/steadySpeed.ts';
import { openingInstants } from '../openingInstants.ts';
import { type Alternative, STOP_NAMES, type StopCost, type StopName } from './alternative.ts';
import { type CommandedRun, commandedRun } from './commandedRun.ts';
import { failingCriteria, limitsMissed } from './limitsMissed.ts';
import { type CostBasis, type StopKindOfCost, stopCost } from './stopCost.ts';
import { type StopGoals, wayToStop } from './waysToStop.ts';

/** Where no longest stop is stated, direct current may take so many times as long as plugging. Assumed. */
const SLOWER_THAN_PLUGGING = 3;

/** Ways to plug that differ from the scenario's own. */
const PLUGS_OTHERWISE: readonly StopName[] = ['lineResistors', 'starPlugging', 'longerDeadTime'];

const NO_COST: StopCost = { operationsPerHour: null, binding: null, contactLife: null, wearsFirst: null };

/**
 * The same load stopped in every other way, each simulated with its own sequence of contactors, beside the plugging of the run.
 * Faults of the run are left out; what its control circuit made of buttons is commanded.
 *
 * @param result of a run with a stop
 * @param resistorForLimits smallest line resistor with which no criterion fails, Ω; null: none was looked for
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
  const none = {
    name,
    figures: null,
    cost: NO_COST,
    reversalTime: null,
    result: null,
    chosen: null,
    remark: '',
  };
  if ('missing' in way) return { ...none, setting: '', missing: way.missing };
  const { setting } = way;
  const result = simulated(way.scenario);
  if (typeof result === 'string') return { ...none, setting, missing: result };
  if (!result.usable) return { ...none, setting, result, missing: result.status.message };
  const idle = neverActs(name, result, run.command);
  if (idle !== null) return { ...none, setting, missing: idle };
  const quadrature = quadratureOf(result.trajectory);
  const figures = stopFigures(quadrature, run.command);
  const isOwn = name === 'plug' && basis.means !== null;
  const plugs = name === 'plug' || PLUGS_OTHERWISE.includes(name);
  // Ways that only coast make and break what the scenario does, as far as they do it at all.
  const instants = plugs && !isOwn ? openingInstants(result.scenario) : null;
  const known = instants === null ? basis.means : instants.means;
  const cost = stopCost(result, figures, kindOf(name, goals), basis, known);
  const missed =
    instants !== null
      ? failingCriteria(result, instants, basis.cageIsFitted)
      : isOwn
        ? basis.failing
        : limitsMissed(result, figures, cost);
  return {
    name,
    setting,
    chosen: way.chosen ?? null,
    remark: [holding(result), missed.length === 0 ? '' : `does not keep: ${missed.join(', ')}`]
      .filter(Boolean)
      .join('; '),
    figures,
    cost,
    reversalTime: reversalTime(quadrature, figures, run.direction),
    result,
    missing: null,
  };
}

/** The run; words where no such starter can be built from the scenario. */
function simulated(scenario: Scenario): RunResult | string {
  try {
    return simulate(scenario);
  } catch (error) {
    if (!(error instanceof ScenarioError)) throw error;
    return `it does not go with this scenario: ${error.problems[0]?.message ?? error.message}`;
  }
}

/** Why a way of braking comes to nothing: the load stands before its turn; null: it acts, or coasting is the way. */
function neverActs(name: StopName, { trajectory, operations }: RunResult, command: number): string | null {
  const early = 'the load has come to rest by itself before';
  if (name === 'directCurrent') {
    const begins = trajectory.events.some(({ kind, t }) => kind === 'injectionBegins' && t > command);
    return begins ? null : `${early} the direct current begins`;
  }
  if (!PLUGS_OTHERWISE.includes(name)) return null;
  const { reversal } = operations;
  return reversal === null || reversal.touch === null ? `${early} the other contactor's turn` : null;
}

/** Electric ways of stopping hold nothing. */
function holding({ trajectory, scenario }: RunResult): string {
  const holds = holdsUnpowered(trajectory.shaft) || scenario.starter.brake !== undefined;
  return holds ? '' : 'nothing holds this load at rest: it goes on turning by itself';
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
