import ode45 from 'ode45-cash-karp';
import type { Mode, PhaseCircuit } from './phaseCircuit.ts';
import { hermite, shrinkBracket } from './rootFinder.ts';
import type { ScenarioShape } from './scenarioShape.ts';

/** One accepted integration step: state and derivative at both ends, in one mode. */
export interface Step {
  readonly t0: number;
  readonly t1: number;
  readonly y0: Float64Array;
  readonly f0: Float64Array;
  readonly y1: Float64Array;
  readonly f1: Float64Array;
  readonly mode: Mode;
}

/** Something that happens when a function of the state changes sign. */
export interface Watcher {
  value(y: Float64Array): number;
  /** Time derivative of the value. */
  slope(y: Float64Array, f: Float64Array): number;
  /** +1 rising, −1 falling, 0 either. */
  readonly direction: -1 | 0 | 1;
  act(t: number, y: Float64Array): void;
}

export interface Stepper {
  /**
   * Integrates in one mode from (t, y) until `stop` or until a watcher fires, appending the steps taken;
   * y is left at the end reached.
   */
  advance(
    mode: Mode,
    t: number,
    y: Float64Array,
    stop: number,
    watchers: readonly Watcher[],
    steps: Step[],
  ): { readonly t: number; readonly hit: Watcher | null };
  /** The state inside a step, by integrating anew from its start with one shorter step; the circuit is left in its mode. */
  within(step: Step, t: number): Float64Array;
  /** The derivative that belongs to a state inside a step. */
  derivativeWithin(step: Step, t: number, y: Float64Array): Float64Array;
}

/** Local error allowed per step, as a fraction of the no-load crest current and of synchronous speed. */
export const STEP_TOLERANCE = 1e-10;

/** Largest step as a fraction of the supply period: also bounds how close two sign changes may be to be missed. */
const LARGEST_STEP = 1 / 40;

/** First step after a switching, s. */
const FIRST_STEP = 1e-5;

/** Instants are located to this, s. */
export const INSTANT_WIDTH = 1e-13;

/** Fractions of a step at which watched functions are inspected. */
const INSPECTED = [0, 0.25, 0.5, 0.75, 1] as const;

/** Wraps the Cash–Karp integrator: own event location and own states between steps, both by re-integration. */
export function createStepper(
  scenario: ScenarioShape,
  circuit: PhaseCircuit,
  tolerance = STEP_TOLERANCE,
): Stepper {
  const { index, size } = circuit;
  const omega = 2 * Math.PI * scenario.supply.frequency;
  const { machine, supply } = scenario;
  const currentScale = (Math.sqrt(2 / 3) * supply.lineVoltage) / (omega * (machine.Lls + machine.Lm));
  // Quadratures follow the states; they take no part in the choice of step.
  const scale = new Float64Array(size).fill(Number.POSITIVE_INFINITY);
  scale.fill(tolerance * currentScale, 0, index.windings);
  scale[index.omega] = (tolerance * omega) / machine.polePairs;
  scale[index.theta] = tolerance / machine.polePairs;
  const { coupling, gear } = scenario.load;
  if (coupling) {
    scale[index.loadSpeed] = (tolerance * omega) / machine.polePairs / (gear?.ratio ?? 1);
    // What the twist adds to the coupling's torque counts as much as the magnetising current's torque at full flux.
    const flux = (Math.sqrt(2 / 3) * supply.lineVoltage) / omega;
    scale[index.twist] = (tolerance * 1.5 * machine.polePairs * flux * currentScale) / coupling.stiffness;
  }
  const largest = LARGEST_STEP / supply.frequency;

  const main = ode45(new Float64Array(size), circuit.rhs, 0, FIRST_STEP, {
    tol: 1,
    errorScaleFunction: (i) => scale[i]!,
    verbose: false,
  });
  // Takes exactly the step it is given.
  const single = ode45(new Float64Array(size), circuit.rhs, 0, FIRST_STEP, {
    tol: Number.POSITIVE_INFINITY,
    verbose: false,
  });

  function within(step: Step, t: number): Float64Array {
    circuit.setMode(step.mode);
    if (t <= step.t0) return step.y0;
    if (t >= step.t1) return step.y1;
    single.y.set(step.y0);
    single.t = step.t0;
    single.dt = t - step.t0;
    single.step();
    return single.y.slice();
  }

  function derivativeWithin(step: Step, t: number, y: Float64Array): Float64Array {
    circuit.setMode(step.mode);
    if (t <= step.t0) return step.f0;
    if (t >= step.t1) return step.f1;
    const f = new Float64Array(size);
    circuit.rhs(f, y, t);
    return f;
  }

  /** Instant inside the step at which the watcher fires, or null. */
  function firing(step: Step, watcher: Watcher): number | null {
    const h = step.t1 - step.t0;
    const v0 = watcher.value(step.y0);
    const v1 = watcher.value(step.y1);
    const s0 = watcher.slope(step.y0, step.f0);
    const s1 = watcher.slope(step.y1, step.f1);
    let left = v0;
    for (let j = 1; j < INSPECTED.length; j++) {
      const x = INSPECTED[j]!;
      const right = x === 1 ? v1 : hermite(v0, s0, v1, s1, h, x);
      const sense = Math.sign(right - left);
      const changes = left !== 0 && Math.sign(left) !== Math.sign(right);
      if (changes && (watcher.direction === 0 || watcher.direction === sense)) {
        const exact = (t: number) => watcher.value(within(step, t));
        // The cubic only says where to look; the bracket itself must hold on re-integrated states.
        for (const [from, to] of [
          [step.t0 + INSPECTED[j - 1]! * h, x === 1 ? step.t1 : step.t0 + x * h],
          [step.t0, step.t1],
        ] as const) {
          const a = exact(from);
          const b = exact(to);
          if (a !== 0 && Math.sign(a) !== Math.sign(b)) {
            return shrinkBracket(exact, from, a, to, b, INSTANT_WIDTH);
          }
        }
      }
      left = right;
    }
    return null;
  }

  function advance(
    mode: Mode,
    t: number,
    y: Float64Array,
    stop: number,
    watchers: readonly Watcher[],
    steps: Step[],
  ): { t: number; hit: Watcher | null } {
    circuit.setMode(mode);
    main.y.set(y);
    main.t = t;
    main.dt = FIRST_STEP;
    let y0 = y.slice();
    let f0 = new Float64Array(size);
    circuit.rhs(f0, y0, t);
    let now = t;
    for (;;) {
      circuit.setMode(mode);
      main.step(stop);
      main.dt = Math.min(main.dt, largest);
      if (Math.abs(stop - main.t) <= INSTANT_WIDTH) main.t = stop;
      const y1 = main.y.slice();
      const f1 = new Float64Array(size);
      circuit.rhs(f1, y1, main.t);
      const step: Step = { t0: now, t1: main.t, y0, f0, y1, f1, mode };
      let hit: Watcher | null = null;
      let at = Number.POSITIVE_INFINITY;
      for (const watcher of watchers) {
        const instant = firing(step, watcher);
        if (instant !== null && instant < at) {
          at = instant;
          hit = watcher;
        }
      }
      if (hit !== null) {
        const yEvent = within(step, at);
        const fEvent = derivativeWithin(step, at, yEvent);
        steps.push({ t0: now, t1: at, y0, f0, y1: yEvent, f1: fEvent, mode });
        y.set(yEvent);
        return { t: at, hit };
      }
      steps.push(step);
      if (main.t === stop) {
        y.set(y1);
        return { t: stop, hit: null };
      }
      now = main.t;
      y0 = y1;
      f0 = f1;
    }
  }

  return { advance, within, derivativeWithin };
}
