import type { Mode } from './phaseCircuit.ts';
import type { PhaseVariableRun } from './phaseVariableModel.ts';
import { shrinkBracket } from './rootFinder.ts';
import { INSTANT_WIDTH, type Step } from './stepper.ts';

/** A value and when it occurred. */
export interface Occurrence {
  readonly value: number;
  readonly time: number;
}

/** A scalar of the state and its time derivative. */
export interface Signal {
  value(y: Float64Array, f: Float64Array, mode: Mode): number;
  rate(y: Float64Array, f: Float64Array, mode: Mode): number;
}

export interface RunReader {
  /** The step that contains t; at a boundary the earlier one for 'left', the later one for 'right'. */
  stepAt(t: number, side: 'left' | 'right'): Step;
  /** State at t. */
  stateAt(t: number, side?: 'left' | 'right'): Float64Array;
  /** State and its derivative at t. */
  pointAt(t: number, side: 'left' | 'right'): { readonly y: Float64Array; readonly f: Float64Array };
  /** Steps lying inside a window whose ends are step ends. */
  stepsIn(from: number, to: number): readonly Step[];
  /** Largest (sense +1) or smallest (sense −1) value in a window, located where the derivative vanishes. */
  extreme(from: number, to: number, signal: Signal, sense: 1 | -1): Occurrence | null;
  /** First instant in the window at which the value rises through zero, or null. */
  firstRise(from: number, to: number, value: (y: Float64Array) => number): number | null;
}

/** Reads a run at any instant and finds extremes and crossings in it. */
export function runReader(run: PhaseVariableRun): RunReader {
  const { steps, stepper } = run;

  /** Number of steps that end before t ('left': at the first step ending at or after t). */
  function position(t: number, side: 'left' | 'right'): number {
    let low = 0;
    let high = steps.length - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      const end = steps[middle]!.t1;
      if (side === 'left' ? end < t : end <= t) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  const stepAt = (t: number, side: 'left' | 'right') => steps[position(t, side)]!;
  const stateAt = (t: number, side: 'left' | 'right' = 'left') => stepper.within(stepAt(t, side), t);

  function pointAt(t: number, side: 'left' | 'right') {
    const step = stepAt(t, side);
    const y = stepper.within(step, t);
    return { y, f: stepper.derivativeWithin(step, t, y) };
  }

  const stepsIn = (from: number, to: number) =>
    from < to ? steps.slice(position(from, 'right'), position(to, 'left') + 1) : [];

  function extreme(from: number, to: number, signal: Signal, sense: 1 | -1): Occurrence | null {
    let best: Occurrence | null = null;
    const offer = (value: number, time: number) => {
      if (best === null || sense * (value - best.value) > 0) best = { value, time };
    };
    const worthRefining = (value: number, margin: number): boolean =>
      best === null || sense * (value - best.value) > -margin;
    for (const step of stepsIn(from, to)) {
      run.circuit.setMode(step.mode);
      const v0 = signal.value(step.y0, step.f0, step.mode);
      const v1 = signal.value(step.y1, step.f1, step.mode);
      offer(v0, step.t0);
      offer(v1, step.t1);
      const r0 = sense * signal.rate(step.y0, step.f0, step.mode);
      const r1 = sense * signal.rate(step.y1, step.f1, step.mode);
      if (!(r0 > 0 && r1 < 0)) continue;
      // The curve lies below both end tangents: the most the inside can add.
      const reach = Math.max(r0, -r1) * (step.t1 - step.t0);
      if (!worthRefining(sense > 0 ? Math.max(v0, v1) : Math.min(v0, v1), reach)) continue;
      const rate = (t: number) => {
        const y = stepper.within(step, t);
        return sense * signal.rate(y, stepper.derivativeWithin(step, t, y), step.mode);
      };
      const time = shrinkBracket(rate, step.t0, r0, step.t1, r1, INSTANT_WIDTH);
      const y = stepper.within(step, time);
      offer(signal.value(y, stepper.derivativeWithin(step, time, y), step.mode), time);
    }
    return best;
  }

  function firstRise(from: number, to: number, value: (y: Float64Array) => number): number | null {
    for (const step of stepsIn(from, to)) {
      const a = value(step.y0);
      const b = value(step.y1);
      if (a < 0 && b >= 0) {
        return shrinkBracket((t) => value(stepper.within(step, t)), step.t0, a, step.t1, b, INSTANT_WIDTH);
      }
    }
    return null;
  }

  return { stepAt, stateAt, pointAt, stepsIn, extreme, firstRise };
}
