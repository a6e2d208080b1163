import type { Circuit } from '../machine/circuit.ts';
import type { ElectricalModel, Observation } from '../machine/electricalModel.ts';
import type { Inserted } from '../machine/inserted.ts';
import type { WritableNumbers } from '../numeric/writableNumbers.ts';
import type { PhaseName } from '../scenario/scenario.ts';
import type { LoadCoefficients } from '../shaft/loadTorque.ts';
import { observeShaft, type ShaftObservation } from '../shaft/observeShaft.ts';
import { type Shaft, shaftSize } from '../shaft/shaft.ts';
import { loadMass, type ShaftMode, speedOffset } from '../shaft/shaftMode.ts';
import type { ShaftPowers } from '../shaft/shaftPowers.ts';
import { shaftRates } from '../shaft/shaftRates.ts';
import type { OdeProblem } from './integrate.ts';
import type { Step } from './step.ts';

/** A stretch of time with one conducting set, one circuit, one frame and one shaft mode: the solution is smooth in it. */
export interface Segment {
  readonly t0: number;
  readonly t1: number;
  readonly kind: 'three' | 'two' | 'none';
  /** For 'two': the terminal without current. */
  readonly openPhase: PhaseName | null;
  /** Words: "synchronous, forward sequence", "stationary", "rotor", "stationary, open phase's axis". */
  readonly frame: string;
  readonly model: ElectricalModel;
  /** Reads the shaft's powers in that mode. */
  readonly powers: ShaftPowers;
  /** Components of the state: electrical, then those of the shaft. */
  readonly size: number;
  /** The machine as connected now, with everything in series. */
  readonly circuit: Circuit;
  /** What the starter has put into that circuit. */
  readonly inserted: Inserted;
  readonly shaft: Shaft;
  readonly mode: ShaftMode;
  /** Load torque of that mode. */
  readonly load: LoadCoefficients;
  /** Dry friction holds everything that turns at rest. */
  readonly held: boolean;
  /** Shaft position at t0, rad; the states count from there. */
  readonly position0: number;
  readonly steps: readonly Step[];
}

/** Everything about one instant: electrical quantities and the shaft. */
export interface Instant extends Observation, ShaftObservation {
  t: number;
  /** Motor shaft, rad/s. */
  omegaM: number;
  /** Motor shaft, rad since t = 0. */
  position: number;
  /** Load seen through the gear from the motor: the coupling's load side, rad/s. */
  omegaLoad: number;
}

/** Electrical states first, then those of the shaft: motor speed (rad/s), angle turned since the segment began (rad), … */
export function stateSize(model: ElectricalModel, shaft: Shaft): number {
  return model.size + shaftSize(shaft);
}

/** Reads components `from` … `to − 1` of a step's state into `y`. */
export function readState(step: Step, t: number, from: number, to: number, y: WritableNumbers): void {
  step.read(t, from, to, y);
}

/** A buffer that every state fits into: two stator fluxes, two cages, a core, four states of the shaft. */
export function stateBuffer(): Float64Array {
  return new Float64Array(LARGEST_STATE);
}

/** Components of the largest state there is. */
const LARGEST_STATE = 16;

/** Fills `out` with everything at time t inside a step of a segment; `y` is scratch of at least the state's size. */
export function observeAt(segment: Segment, step: Step, t: number, y: Float64Array, out: Instant): void {
  const { model, shaft } = segment;
  step.read(t, 0, segment.size, y);
  const omegaM = y[model.size]!;
  const theta = y[model.size + 1]!;
  model.observe(t, y, omegaM, theta, out);
  observeShaft(shaft, segment.mode, y, model.size, out.torque, out, segment.load);
  out.t = t;
  out.omegaM = omegaM;
  out.omegaLoad = y[model.size + speedOffset(loadMass(shaft))]!;
  out.position = segment.position0 + theta;
}

/** The right-hand side of one segment: electrical model and shaft together. */
export function segmentProblem(model: ElectricalModel, shaft: Shaft, mode: ShaftMode): OdeProblem {
  const at = model.size;
  const turn = shaftRates(shaft, mode);
  return {
    size: stateSize(model, shaft),
    derivatives: (t, y, dydt) => {
      const torque = model.derivatives(t, y, y[at]!, dydt);
      turn(y, at, torque, dydt);
    },
  };
}
