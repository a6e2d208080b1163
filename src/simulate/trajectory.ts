import { newObservation } from '../machine/electricalModel.ts';
import type { Command, PhaseName, Scenario } from '../scenario/scenario.ts';
import { newShaftObservation } from '../shaft/observeShaft.ts';
import type { ShaftNote } from '../shaft/reviewShaft.ts';
import type { Shaft } from '../shaft/shaft.ts';
import type { StarterEvent } from '../starter/starterEvent.ts';
import type { Channel, ThermalRecord } from './channels.ts';
import type { WorkCount } from './integrate.ts';
import { type Instant, observeAt, type Segment, stateBuffer } from './segment.ts';
import type { RunStatus } from './status.ts';

/**
 * What the machine is doing at one instant, whatever the conducting set and the frame of integration were.
 * Space vectors are amplitude invariant, in stationary axes (α on phase A).
 */
export interface Point {
  /** The instant, s. */
  t: number;
  /** Current in line A, A, positive into the motor. */
  iA: number;
  /** Current in line B, A, positive into the motor. */
  iB: number;
  /** Current in line C, A, positive into the motor. */
  iC: number;
  /** Air-gap torque, N·m. */
  torque: number;
  /** Torque of the load including friction and gear loss at the motor shaft, N·m, positive against forward rotation. */
  loadTorque: number;
  /** Torque in the elastic coupling, N·m, positive when the motor drives forward; 0 without one. */
  couplingTorque: number;
  /** Speed of the load seen through the gear from the motor: that of the coupling's load side, rad/s. */
  loadSpeed: number;
  /** rad/s, mechanical. */
  speed: number;
  /** Shaft position since t = 0, rad. */
  position: number;
  /** Motor terminal voltage space vector, α component, V (crest of phase voltage). */
  uAlpha: number;
  /** Its β component, V. */
  uBeta: number;
  /** Stator flux linkage of the machine, α component, Wb (crest). */
  psiAlpha: number;
  /** Its β component, Wb. */
  psiBeta: number;
  /** Rotor flux linkage (mean of the cages weighted by 1/leakage), α component, Wb. */
  psiRAlpha: number;
  /** Its β component, Wb. */
  psiRBeta: number;
}

/** Everything discrete that happened, with its cause: "forward pole B clears: its current zero". */
export interface RunEvent extends Omit<StarterEvent, 'kind'> {
  readonly kind: RunEventKind;
  /** Motor shaft at that instant, rad/s. */
  readonly speed: number;
}

/** Kind of a discrete event: the starter's, and those of shaft and circuit. */
export type RunEventKind = StarterEvent['kind'] | ShaftNote['kind'] | 'shortCircuit' | 'settled';

/** The circuit that a reversing contactor closes onto an arc that still burns. */
export interface ShortCircuit {
  /** The instant of the touch, s. */
  readonly t: number;
  /** Motor terminal on which both contactors' poles conduct. */
  readonly phase: PhaseName;
  /** A r.m.s., from the source impedance; null when the source is stiff, so that nothing given limits it. */
  readonly prospectiveCurrent: number | null;
  /** When the outgoing contactor's last arc would have been extinguished had the other not closed, s. */
  readonly lastExtinction: number;
  /** A pole of the outgoing contactor is welded: no waiting would have helped. */
  readonly welded: boolean;
  /** Poles of both contactors are closed on the terminal: it is no matter of arcs. */
  readonly bothClosed: boolean;
}

/** The result of a run: readable at any instant between `tStart` and `tEnd`. */
export interface Trajectory {
  readonly scenario: Scenario;
  /** The shaft as the run begins, before any brake holds it. */
  readonly shaft: Shaft;
  readonly status: RunStatus;
  /** First instant, s. */
  readonly tStart: number;
  /** Last instant, s. */
  readonly tEnd: number;
  /**
   * The stretches in which the solution is smooth, in the order of time, each in axes of its own. `at` and `sample` read them.
   *
   * @internal
   */
  readonly segments: readonly Segment[];
  readonly events: readonly RunEvent[];
  readonly shortCircuit: ShortCircuit | null;
  /** Leakage energy released where ideal poles chop a current, J. */
  readonly interruptionLoss: number;
  readonly stats: Readonly<WorkCount>;
  /** What every device, coil and pole did. */
  readonly channels: readonly Channel[];
  /** Thermal memory of the overload relay; null: there is none. */
  readonly thermal: ThermalRecord | null;
  /** What the contactors were made to do: the scenario's commands, or what its control circuit made of the buttons. */
  readonly commands: readonly Command[];
  /**
   * State and outputs at t, s (the later segment's value at a switching instant unless `side` says left). Before the
   * beginning it is the first instant, after the end the last.
   */
  at(t: number, side?: 'left' | 'right'): Point;
  /**
   * A number `count` of evenly spaced samples of [t0, t1], s, both ends included: one column per name of Point, of length
   * `count`, in the units of Point.
   */
  sample(t0: number, t1: number, count: number): Record<keyof Point, Float64Array>;
  /** Samples at ascending instants, s: one column per name of Point, as long as `instants`, in the units of Point. */
  sampleAt(instants: Float64Array): Record<keyof Point, Float64Array>;
}

/** An instant with everything zero, to be filled. */
export function newInstant(): Instant {
  return { ...newObservation(), ...newShaftObservation(), t: 0, omegaM: 0, position: 0, omegaLoad: 0 };
}

/** Phase current of an instant: the projection of the space vector on the phase's axis. */
export function phaseCurrent(instant: { iAlpha: number; iBeta: number }, phase: 0 | 1 | 2): number {
  if (phase === 0) return instant.iAlpha;
  const beta = (Math.sqrt(3) / 2) * instant.iBeta;
  return -instant.iAlpha / 2 + (phase === 1 ? beta : -beta);
}

/** Index of the last item whose t0 ≤ t (right) or < t (left), never below 0. */
function findAt(items: readonly { readonly t0: number }[], t: number, side: 'left' | 'right'): number {
  let low = 0;
  let high = items.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    const start = items[middle]!.t0;
    if (side === 'right' ? start <= t : start < t) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Fills a point with what is read off an instant, and gives it back. */
function pointOf(instant: Instant, out: Point): Point {
  out.t = instant.t;
  out.iA = phaseCurrent(instant, 0);
  out.iB = phaseCurrent(instant, 1);
  out.iC = phaseCurrent(instant, 2);
  out.torque = instant.torque;
  out.loadTorque = instant.loadTorque;
  out.couplingTorque = instant.couplingTorque;
  out.loadSpeed = instant.omegaLoad;
  out.speed = instant.omegaM;
  out.position = instant.position;
  out.uAlpha = instant.uAlpha;
  out.uBeta = instant.uBeta;
  out.psiAlpha = instant.psiAlpha;
  out.psiBeta = instant.psiBeta;
  out.psiRAlpha = instant.psiRAlpha;
  out.psiRBeta = instant.psiRBeta;
  return out;
}

/** A point with everything zero, to be filled. */
function newPoint(): Point {
  return {
    t: 0,
    iA: 0,
    iB: 0,
    iC: 0,
    torque: 0,
    loadTorque: 0,
    couplingTorque: 0,
    loadSpeed: 0,
    speed: 0,
    position: 0,
    uAlpha: 0,
    uBeta: 0,
    psiAlpha: 0,
    psiBeta: 0,
    psiRAlpha: 0,
    psiRBeta: 0,
  };
}

/** `count` instants from t0 to t1, both included exactly, s. */
export function evenInstants(t0: number, t1: number, count: number): Float64Array {
  const instants = new Float64Array(count);
  for (let i = 0; i < count; i++) instants[i] = t0 + (i * (t1 - t0)) / (count - 1);
  if (count > 0) instants[0] = t0;
  if (count > 1) instants[count - 1] = t1;
  return instants;
}

/** Adds reading access to the stored segments. */
export function readableTrajectory(
  parts: Omit<Trajectory, 'at' | 'sample' | 'sampleAt' | 'tStart' | 'tEnd'>,
): Trajectory {
  const { segments } = parts;
  const tStart = segments[0]?.t0 ?? 0;
  const tEnd = segments.at(-1)?.t1 ?? 0;
  const y = stateBuffer();
  const instant = newInstant();

  function at(t: number, side: 'left' | 'right' = 'right'): Point {
    const time = Math.min(Math.max(t, tStart), tEnd);
    const segment = segments[findAt(segments, time, side)]!;
    observeAt(segment, segment.steps[findAt(segment.steps, time, side)]!, time, y, instant);
    return pointOf(instant, newPoint());
  }

  function sample(t0: number, t1: number, count: number): Record<keyof Point, Float64Array> {
    return sampleAt(evenInstants(t0, t1, count));
  }

  /** The step of each instant is that of the one before or a later one. */
  function sampleAt(instants: Float64Array): Record<keyof Point, Float64Array> {
    const count = instants.length;
    const point = newPoint();
    const names = Object.keys(point) as (keyof Point)[];
    const columns = names.map(() => new Float64Array(count));
    let s = 0;
    let k = 0;
    for (let i = 0; i < count; i++) {
      const time = Math.min(Math.max(instants[i]!, tStart), tEnd);
      while (s + 1 < segments.length && segments[s + 1]!.t0 <= time) {
        s++;
        k = 0;
      }
      const { steps } = segments[s]!;
      while (k + 1 < steps.length && steps[k + 1]!.t0 <= time) k++;
      observeAt(segments[s]!, steps[k]!, time, y, instant);
      pointOf(instant, point);
      for (let c = 0; c < names.length; c++) columns[c]![i] = point[names[c]!];
    }
    return Object.fromEntries(names.map((name, c) => [name, columns[c]!])) as Record<
      keyof Point,
      Float64Array
    >;
  }

  return { ...parts, tStart, tEnd, at, sample, sampleAt };
}
