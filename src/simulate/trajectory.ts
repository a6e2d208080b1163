import { newObservation } from '../machine/electricalModel.ts';
import type { Command, PhaseName, Scenario } from '../scenario/scenario.ts';
import { newShaftObservation } from '../shaft/observeShaft.ts';
import type { ShaftNote } from '../shaft/reviewShaft.ts';
import type { Shaft } from '../shaft/shaft.ts';
import type { StarterEvent } from '../starter/starterEvent.ts';
import type { Channel, ThermalRecord } from './channels.ts';
import type { WorkCount } from './odexAdapter.ts';
import { type Instant, observeAt, type Segment } from './segment.ts';
import type { RunStatus } from './status.ts';

/**
 * What the machine is doing at one instant, whatever the conducting set and the frame of integration were.
 * Space vectors are amplitude invariant, in stationary axes (α on phase A).
 */
export interface Point {
  t: number;
  /** Motor line currents, A, positive into the motor. */
  iA: number;
  iB: number;
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
  /** Motor terminal voltage space vector, V (crest of phase voltage). */
  uAlpha: number;
  uBeta: number;
  /** Stator flux linkage of the machine, Wb (crest). */
  psiAlpha: number;
  psiBeta: number;
  /** Rotor flux linkage (mean of the cages weighted by 1/leakage), Wb. */
  psiRAlpha: number;
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
  readonly shaft: Shaft;
  readonly status: RunStatus;
  readonly tStart: number;
  readonly tEnd: number;
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
  /** State and outputs at t (the later segment's value at a switching instant unless `side` says left). */
  at(t: number, side?: 'left' | 'right'): Point;
  /** `count` evenly spaced samples of [t0, t1], one column per name of Point. */
  sample(t0: number, t1: number, count: number): Record<keyof Point, Float64Array>;
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

/** Adds reading access to the stored segments. */
export function readableTrajectory(parts: Omit<Trajectory, 'at' | 'sample' | 'tStart' | 'tEnd'>): Trajectory {
  const { segments } = parts;
  const tStart = segments[0]?.t0 ?? 0;
  const tEnd = segments.at(-1)?.t1 ?? 0;
  const y: number[] = [];
  const instant = newInstant();

  function at(t: number, side: 'left' | 'right' = 'right'): Point {
    const time = Math.min(Math.max(t, tStart), tEnd);
    const segment = segments[findAt(segments, time, side)]!;
    const step = segment.steps[findAt(segment.steps, time, side)]!;
    observeAt(segment, step, time, y, instant);
    return {
      t: time,
      iA: phaseCurrent(instant, 0),
      iB: phaseCurrent(instant, 1),
      iC: phaseCurrent(instant, 2),
      torque: instant.torque,
      loadTorque: instant.loadTorque,
      couplingTorque: instant.couplingTorque,
      loadSpeed: instant.omegaLoad,
      speed: instant.omegaM,
      position: instant.position,
      uAlpha: instant.uAlpha,
      uBeta: instant.uBeta,
      psiAlpha: instant.psiAlpha,
      psiBeta: instant.psiBeta,
      psiRAlpha: instant.psiRAlpha,
      psiRBeta: instant.psiRBeta,
    };
  }

  function sample(t0: number, t1: number, count: number): Record<keyof Point, Float64Array> {
    const first = at(t0);
    const names = Object.keys(first) as (keyof Point)[];
    const columns = Object.fromEntries(names.map((name) => [name, new Float64Array(count)])) as Record<
      keyof Point,
      Float64Array
    >;
    for (let i = 0; i < count; i++) {
      const point = i === 0 ? first : at(i === count - 1 ? t1 : t0 + (i * (t1 - t0)) / (count - 1));
      for (const name of names) columns[name][i] = point[name];
    }
    return columns;
  }

  return { ...parts, tStart, tEnd, at, sample };
}
