import { integral, type Quadrature, quadratureOf } from '../../measure/quadrature.ts';
import type { RunResult } from '../../measure/result.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { steadySpeed } from '../../shaft/steadySpeed.ts';
import { coastDown } from '../stop/coastDown.ts';
import { type CageBodies, cageBodies, perBody } from './cageBodies.ts';
import type { HeatPulse, OperationHeat } from './heat.ts';
import { type OperationWindows, operationWindows } from './operationWindows.ts';
import { steadyLosses } from './steadyLosses.ts';

/**
 * Heat of the operation that a run shows: its start, running under its load, its stop. A double cage is divided by `CAGE_RULE`.
 * Resistors in the lines and at the slip rings are outside the motor: their heat is nowhere in it.
 *
 * @param cageIsFitted the double cage was fitted to a nameplate
 * @returns words where the run does not contain it
 */
export function heatOfRun(result: RunResult, cageIsFitted = false): OperationHeat | string {
  const quadrature = quadratureOf(result.trajectory);
  const windows = operationWindows(result, quadrature);
  return typeof windows === 'string'
    ? windows
    : heatOfWindows(result.scenario, quadrature, windows, cageIsFitted);
}

/** The same from the windows of start and stop. */
export function heatOfWindows(
  scenario: Scenario,
  quadrature: Quadrature,
  windows: OperationWindows,
  cageIsFitted: boolean,
): OperationHeat | string {
  const { start, stop, direction, stopKind, zero } = windows;
  const bodies = cageBodies(scenario.machine, scenario.thermal, cageIsFitted);
  const speed = steadySpeed(scenario, direction);
  if (speed === null) return 'the motor cannot drive this load at any steady speed';
  const { outcome, time } = coastDown(quadrature.trajectory.shaft, speed);
  const turns = zero !== null && zero > stop.from && zero < stop.to ? [zero] : [];
  return {
    start: pulseOver(quadrature, [start.from, start.to], bodies),
    running: runningLosses(scenario, direction * speed, bodies),
    stop: pulseOver(quadrature, [stop.from, ...turns, stop.to], bodies),
    stopKind,
    ...(outcome === 'rest' && time !== null && { coastTime: time }),
    ...(stopKind === 'reversal' &&
      zero !== null && { braking: pulseOver(quadrature, [stop.from, zero], bodies) }),
  };
}

/**
 * Heat in the motor over a stretch of a run, J.
 *
 * @param instants start and end, s, and between them the instants at which the rotation turns round
 */
export function pulseOver(
  quadrature: Quadrature,
  instants: readonly number[],
  bodies: CageBodies,
): HeatPulse {
  const { trajectory } = quadrature;
  const ta = instants[0]!;
  const tb = instants.at(-1)!;
  const over = (name: Parameters<typeof integral>[1]) => integral(quadrature, name, ta, tb);
  let turned = 0;
  for (let i = 1; i < instants.length; i++)
    turned += Math.abs(trajectory.at(instants[i]!).position - trajectory.at(instants[i - 1]!).position);
  return {
    winding: over('statorLoss'),
    ...perBody([over('cage1Loss'), over('cage2Loss')], bodies),
    // The dry friction of the bearings is constant; the integral of all dry friction holds that of the load too.
    frame: over('ironLoss') + over('windagePower') + trajectory.shaft.motor.friction * turned,
    duration: tb - ta,
  };
}

/** @param speed rad/s in the direction of the field */
function runningLosses({ machine, supply }: Scenario, speed: number, bodies: CageBodies): HeatPulse {
  const synchronous = (2 * Math.PI * supply.frequency) / machine.polePairs;
  return steadyLosses(machine, supply, 1 - speed / synchronous, bodies);
}
