import type { FluxVector } from '../machine/electricalModel.ts';
import { steadyFlux } from '../machine/steadyFlux.ts';
import { supplyVector } from '../machine/supplyVector.ts';
import { contradiction } from '../scenario/contradiction.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { type FrictionDirection, holds, type Shaft } from '../shaft/shaft.ts';
import { steadySpeed } from '../shaft/steadySpeed.ts';
import { supplyPhases } from '../starter/conduction.ts';
import { initialStarter, type StarterState } from '../starter/starter.ts';

/** The continuous and the discrete state between two segments. Flux and speed are continuous through switchings. */
export interface RunState {
  readonly t: number;
  readonly flux: FluxVector;
  /** rad/s */
  readonly omegaM: number;
  /** rad */
  readonly position: number;
  readonly friction: FrictionDirection;
  readonly held: boolean;
  readonly starter: StarterState;
}

/** State at t = 0: at rest without flux, or in the steady state that circuit and load give. */
export function initialRunState(scenario: Scenario, shaft: Shaft): RunState {
  const starter = initialStarter(scenario.starter, scenario.actions, scenario.initial);
  const fluxCount = 2 + 2 * scenario.machine.cages.length;
  if (scenario.initial === 'rest') {
    const held = holds(shaft, -shaft.gravity);
    return {
      t: 0,
      flux: new Array<number>(fluxCount).fill(0),
      omegaM: 0,
      position: 0,
      friction: held ? 0 : directionOf(-shaft.gravity),
      held,
      starter,
    };
  }
  const direction = scenario.initial === 'runningForward' ? 1 : -1;
  const contactor = direction === 1 ? 'forward' : 'reverse';
  const speed = steadySpeed(scenario, direction);
  if (speed === null)
    throw contradiction(
      'initial',
      scenario.initial,
      'the machine cannot drive this load at any steady speed, so it cannot be running at t = 0',
      'a start from rest, or a load the machine can drive',
    );
  const applied = supplyVector(scenario.supply, supplyPhases(scenario.starter, contactor));
  const synchronous = (2 * Math.PI * scenario.supply.frequency) / scenario.machine.polePairs;
  const slip = 1 - (direction * speed) / synchronous;
  return {
    t: 0,
    flux: steadyFlux(scenario.machine, scenario.supply, applied, slip),
    omegaM: speed,
    position: 0,
    friction: direction,
    held: false,
    starter,
  };
}

/** Friction opposes the motion that a net torque will cause; with none, forward is as good as reverse. */
export function directionOf(drive: number): FrictionDirection {
  return drive >= 0 ? 1 : -1;
}
