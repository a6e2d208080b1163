import type { ElectricalModel, Observation } from '../machine/electricalModel.ts';
import type { PhaseName } from '../scenario/scenario.ts';
import type { FrictionDirection, Shaft } from '../shaft/shaft.ts';
import { frictionTorque, smoothLoadTorque } from '../shaft/shaft.ts';
import type { OdeProblem, Step } from './odexAdapter.ts';

/** A stretch of time with one conducting set, one frame and one friction direction: the solution is smooth in it. */
export interface Segment {
  readonly t0: number;
  readonly t1: number;
  readonly kind: 'three' | 'two' | 'none';
  /** For 'two': the terminal without current. */
  readonly openPhase: PhaseName | null;
  /** Words: "synchronous, forward sequence", "stationary", "rotor", "stationary, open phase's axis". */
  readonly frame: string;
  /** 0: held at rest by dry friction, or no dry friction at all with `held` false. */
  readonly friction: FrictionDirection;
  readonly held: boolean;
  readonly model: ElectricalModel;
  /** Shaft position at t0, rad; the states count from there. */
  readonly position0: number;
  readonly steps: readonly Step[];
}

/** Everything about one instant: electrical quantities and the shaft. */
export interface Instant extends Observation {
  t: number;
  /** rad/s */
  omegaM: number;
  /** rad since t = 0 */
  position: number;
}

/** Electrical states first, then speed (rad/s) and the angle turned since the segment began (rad). */
export function stateSize(model: ElectricalModel): number {
  return model.size + 2;
}

/** Reads the whole state of a step into `y`. */
export function readState(model: ElectricalModel, step: Step, t: number, y: number[]): void {
  for (let c = 0; c < model.size + 2; c++) y[c] = step.value(c, t);
}

/** Fills `out` with everything at time t inside a step of a segment; `y` is scratch of at least the state's size. */
export function observeAt(segment: Segment, step: Step, t: number, y: number[], out: Instant): void {
  const { model } = segment;
  readState(model, step, t, y);
  const omegaM = y[model.size]!;
  const theta = y[model.size + 1]!;
  model.observe(t, y, omegaM, theta, out);
  out.t = t;
  out.omegaM = omegaM;
  out.position = segment.position0 + theta;
}

/** The right-hand side of one segment: electrical model and shaft together. */
export function segmentProblem(
  model: ElectricalModel,
  shaft: Shaft,
  friction: FrictionDirection,
  held: boolean,
): OdeProblem {
  const speedAt = model.size;
  const dry = frictionTorque(shaft, friction);
  return {
    size: stateSize(model),
    derivatives: (t, y, dydt) => {
      const omegaM = y[speedAt]!;
      const torque = model.derivatives(t, y, omegaM, dydt);
      dydt[speedAt] = held ? 0 : (torque - smoothLoadTorque(shaft, omegaM) - dry) / shaft.inertia;
      dydt[speedAt + 1] = omegaM;
    },
  };
}
