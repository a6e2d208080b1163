import type { FluxVector } from '../machine/electricalModel.ts';
import { steadyFlux } from '../machine/steadyFlux.ts';
import { supplyVector } from '../machine/supplyVector.ts';
import { contradiction } from '../scenario/contradiction.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { initialShaft } from '../shaft/initialShaft.ts';
import type { Shaft } from '../shaft/shaft.ts';
import type { ShaftMode } from '../shaft/shaftMode.ts';
import { steadySpeed } from '../shaft/steadySpeed.ts';
import { supplyPhases } from '../starter/conduction.ts';
import { initialHeat } from '../starter/overloadRelay.ts';
import { initialStarter, type StarterState } from '../starter/starter.ts';
import type { Heat } from './thermalMemory.ts';

/** The continuous and the discrete state between two segments. Flux and speed are continuous through switchings. */
export interface RunState {
  readonly t: number;
  readonly flux: FluxVector;
  /** States of the shaft, the angle counted from 0 anew in each segment. */
  readonly shaft: readonly number[];
  readonly mode: ShaftMode;
  /** Motor shaft, rad since t = 0. */
  readonly position: number;
  readonly starter: StarterState;
  /** Of the overload relay; null: there is none. */
  readonly heat: Heat | null;
}

/** State at t = 0: at rest without flux, or in the steady state that circuit and load give. */
export function initialRunState(scenario: Scenario, shaft: Shaft): RunState {
  const { machine } = scenario;
  const starter = initialStarter(
    scenario.starter,
    scenario.actions,
    scenario.initial,
    machine.rotorResistors ?? null,
  );
  const overload = scenario.starter.control?.overload ?? null;
  const first = overload === null ? 0 : initialHeat(overload);
  const heat: Heat | null = overload === null ? null : [first, first, first];
  if (scenario.initial === 'rest') {
    const fluxCount = 2 + 2 * machine.cages.length + (machine.core === undefined ? 0 : 2);
    const { state, mode } = initialShaft(shaft, 0);
    return {
      t: 0,
      flux: new Array<number>(fluxCount).fill(0),
      shaft: state,
      mode,
      position: 0,
      starter,
      heat,
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
  const { state, mode } = initialShaft(shaft, speed);
  const flux = steadyFlux(machine, scenario.supply, applied, slip);
  return { t: 0, flux, shaft: state, mode, position: 0, starter, heat };
}
