import { circuitOf } from '../../src/machine/circuit.ts';
import type { ElectricalModel } from '../../src/machine/electricalModel.ts';
import { FLOW, FLOW_COUNT } from '../../src/machine/flows.ts';
import { NOTHING_INSERTED } from '../../src/machine/inserted.ts';
import { isCommand } from '../../src/scenario/scenario.ts';
import { initialShaft } from '../../src/shaft/initialShaft.ts';
import { loadCoefficients } from '../../src/shaft/loadTorque.ts';
import { shaftOf } from '../../src/shaft/shaft.ts';
import { shaftPowers } from '../../src/shaft/shaftPowers.ts';
import { type Segment, stateSize } from '../../src/simulate/segment.ts';
import { type Step, stepOf } from '../../src/simulate/step.ts';
import { readableTrajectory, type Trajectory } from '../../src/simulate/trajectory.ts';
import { scenarioOf } from './scenarios.ts';
import { KRAUSE } from './textbookMachines.ts';

/** What a synthetic run shows; anything left out is zero. */
export interface KnownFunctions {
  readonly iAlpha?: (t: number) => number;
  readonly iBeta?: (t: number) => number;
  readonly torque?: (t: number) => number;
  readonly speed?: (t: number) => number;
  readonly uAlpha?: (t: number) => number;
}

/**
 * A trajectory whose readings are known functions of time, cut into segments at `cuts` and into steps of uneven length,
 * so that measuring can be tried on exact values. Supply period 1/60 s.
 */
export function syntheticTrajectory(
  functions: KnownFunctions,
  cuts: readonly number[],
  kinds: readonly Segment['kind'][] = [],
): Trajectory {
  const scenario = scenarioOf(KRAUSE.hp3);
  const shaft = shaftOf(scenario);
  const { mode } = initialShaft(shaft, 0);
  const zero = () => 0;
  const model: ElectricalModel = {
    size: 0,
    frame: 'none',
    derivatives: () => 0,
    observe: (t, _y, _omegaM, _thetaM, out) => {
      out.iAlpha = (functions.iAlpha ?? zero)(t);
      out.iBeta = (functions.iBeta ?? zero)(t);
      out.torque = (functions.torque ?? zero)(t);
      out.uAlpha = (functions.uAlpha ?? zero)(t);
      out.uBeta = 0;
    },
    observeFlows: (t, _y, _omegaM, _thetaM, out) => {
      out.fill(0, 0, FLOW_COUNT);
      out[FLOW.iAlpha] = (functions.iAlpha ?? zero)(t);
      out[FLOW.iBeta] = (functions.iBeta ?? zero)(t);
      out[FLOW.torque] = (functions.torque ?? zero)(t);
      out[FLOW.uSquared] = (functions.uAlpha ?? zero)(t) ** 2;
    },
    fromStationary: () => [],
    toStationary: () => [],
    terminalCurrent: () => 0,
  };
  const value: Step['value'] = (component, t) => (component === 0 ? (functions.speed ?? zero)(t) : 0);
  const segments = cuts.slice(1).map((t1, k): Segment => {
    const t0 = cuts[k]!;
    const inner = t0 + 0.37 * (t1 - t0);
    return {
      t0,
      t1,
      kind: kinds[k] ?? 'three',
      openPhase: null,
      frame: 'none',
      held: false,
      model,
      size: stateSize(model, shaft),
      circuit: circuitOf(scenario.machine, scenario.supply),
      inserted: NOTHING_INSERTED,
      shaft,
      mode,
      load: loadCoefficients(shaft, mode),
      powers: shaftPowers(shaft, mode, loadCoefficients(shaft, mode)),
      position0: 0,
      steps: [stepOf(t0, inner, value), stepOf(inner, t1, value)],
    };
  });
  return readableTrajectory({
    scenario,
    shaft,
    status: { code: 'finished', time: cuts.at(-1)!, message: '' },
    segments,
    events: [],
    shortCircuit: null,
    interruptionLoss: 0,
    channels: [],
    thermal: null,
    commands: scenario.actions.filter(isCommand),
    stats: { evaluations: 0, steps: 0 },
  });
}
