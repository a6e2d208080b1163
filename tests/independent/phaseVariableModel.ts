import type { DriveTrain, MassName, Motion, ShaftMode } from './driveTrain.ts';
import type { IndependentMetrics } from './independentMetric.ts';
import { measureRun } from './measureRun.ts';
import { type Mode, type PhaseCircuit, phaseCircuit } from './phaseCircuit.ts';
import type { ScenarioShape } from './scenarioShape.ts';
import { type StarterLogic, starterLogic } from './starterLogic.ts';
import type { StateIndex } from './stateIndex.ts';
import { steadyCurrents, steadySpeed } from './steadyCircuit.ts';
import { createStepper, type Step, type Stepper, type Watcher } from './stepper.ts';
import type { Closing, LogEntry, Opening } from './switchingRecord.ts';

/** A whole run: every step taken, what the contacts did, and what chopping poles released. */
export interface PhaseVariableRun {
  readonly scenario: ScenarioShape;
  readonly circuit: PhaseCircuit;
  readonly stepper: Stepper;
  readonly steps: readonly Step[];
  readonly openings: readonly Opening[];
  readonly closings: readonly Closing[];
  readonly log: readonly LogEntry[];
  readonly endTime: number;
  /** Magnetic energy lost at instants when ideal poles chopped current, J. */
  readonly chopLoss: number;
}

export interface PhaseVariableOptions {
  /** Speed at t = 0 of a machine without flux, rad/s; instead of the scenario's initial state. */
  readonly initialSpeed?: number;
  readonly tolerance?: number;
}

/** Runs the phase-variable model and measures everything on it. */
export function runPhaseVariableModel(
  scenario: ScenarioShape,
  options: PhaseVariableOptions = {},
): {
  readonly metrics: IndependentMetrics;
  readonly events: readonly LogEntry[];
  readonly run: PhaseVariableRun;
} {
  const run = integrateRun(scenario, options);
  return { metrics: measureRun(run), events: run.log, run };
}

/** Integrates a scenario from t = 0 to its end time. */
export function integrateRun(scenario: ScenarioShape, options: PhaseVariableOptions = {}): PhaseVariableRun {
  const endTime = scenario.solver.endTime;
  if (endTime === 'auto') throw new Error('the phase-variable model needs an end time');
  const circuit = phaseCircuit(scenario);
  const { index, train } = circuit;
  const logic = starterLogic(scenario, index.charge);
  const stepper = createStepper(scenario, circuit, options.tolerance);
  const steps: Step[] = [];
  const y = new Float64Array(circuit.size);
  let t = 0;
  let chopLoss = 0;
  let shaft: ShaftMode = startShaft(scenario, options, logic.supply(), train, index, y);
  let mode: Mode = { supply: logic.supply(), inserted: logic.inserted(), ...shaft };
  circuit.setMode(mode);

  const speedWatchers = createSpeedWatchers(scenario, logic, index);

  /** What the shaft may do next; acting on it changes `shaft`. */
  function shaftWatchers(): Watcher[] {
    const watchers: Watcher[] = [];
    for (const mass of train.masses) {
      const at = train.speedAt(mass);
      if (shaft[mass].held) {
        for (const way of [1, -1] as const) {
          watchers.push({
            value: (state) => train.drive(mass, way, state, circuit.torque(state), mode),
            slope: (state, f) => train.driveRate(mass, way, state, f, circuit.torqueRate(state, f), mode),
            direction: 1,
            // Leaving rest is decided at the top of the loop, where changes of torque by switching are seen too.
            act: () => {},
          });
        }
        continue;
      }
      if (mass === 'load' && !train.sticks(mass)) continue;
      watchers.push({
        value: (state) => state[at]!,
        slope: (_state, f) => f[at]!,
        direction: 0,
        act: (now, state) => {
          state[at] = 0;
          if (mass === 'motor') logic.log.push({ t: now, kind: 'zeroSpeed' });
          if (!train.sticks(mass)) return;
          shaft = withMotion(shaft, mass, train.settle(mass, state, circuit.torque(state), shaft));
          if (shaft[mass].held) logic.log.push({ t: now, kind: 'shaftHeld' });
        },
      });
    }
    for (const corner of train.corners(shaft)) {
      const value = (state: Float64Array) => corner(state, circuit.torque(state));
      watchers.push({ value, slope: quotient(value), direction: 0, act: () => {} });
    }
    if (train.halfPlay === 0) return watchers;
    const { touching } = shaft;
    for (const side of touching === 0 ? ([1, -1] as const) : [touching]) {
      const into = touching === 0 ? 1 : -1;
      watchers.push({
        value: (state) => into * (side * state[index.twist]! - train.halfPlay),
        slope: (_state, f) => into * side * f[index.twist]!,
        direction: 1,
        act: () => {
          shaft = { ...shaft, touching: touching === 0 ? side : 0 };
        },
      });
    }
    return watchers;
  }

  function leaveRest(): void {
    const torque = circuit.torque(y);
    for (const mass of train.masses) {
      if (!shaft[mass].held) continue;
      const motion = train.settle(mass, y, torque, shaft);
      // An event leaves the drive at the limit, up to the width to which instants are known.
      const way = motion.held
        ? ([1, -1] as const).find((w) => train.drive(mass, w, y, torque, shaft) >= 0)
        : 0;
      if (motion.held && way === undefined) continue;
      shaft = withMotion(shaft, mass, motion.held ? { way: way!, held: false } : motion);
      logic.log.push({ t, kind: 'shaftBreaksAway' });
    }
  }

  while (t < endTime) {
    const before = mode.supply;
    const wasStar = mode.inserted.star;
    logic.doDue(t, y);
    const supply = logic.supply();
    mode = { supply, inserted: logic.inserted(), ...shaft };
    circuit.setMode(mode);
    const lost = [0, 1, 2].some((k) => before[k]! >= 0 && supply[k]! < 0);
    if (logic.takeChopped() && lost) {
      // Windings that change to star do so after their current has been chopped.
      const connected = { ...mode, inserted: { ...mode.inserted, star: wasStar } };
      circuit.setMode({ ...connected, supply: before });
      const stored = circuit.magneticEnergy(y);
      circuit.setMode(connected);
      circuit.chop(y);
      chopLoss += stored - circuit.magneticEnergy(y);
      circuit.setMode(mode);
    }
    tidyCurrents(supply, y);
    leaveRest();
    mode = { supply, inserted: mode.inserted, ...shaft };
    const stop = Math.min(endTime, logic.next());
    const watchers = [...arcWatchers(logic), ...speedWatchers(), ...shaftWatchers()];
    const reached = stepper.advance(mode, t, y, stop, watchers, steps);
    t = reached.t;
    reached.hit?.act(t, y);
    // What the event set exactly (a speed of zero) is also what the step ended with.
    steps.at(-1)!.y1.set(y);
  }

  return {
    scenario,
    circuit,
    stepper,
    steps,
    openings: logic.openings,
    closings: logic.closings,
    log: logic.log,
    endTime,
    chopLoss,
  };
}

/** Puts speed, currents and twist at t = 0 into the state. */
function startShaft(
  scenario: ScenarioShape,
  options: PhaseVariableOptions,
  supply: Mode['supply'],
  train: DriveTrain,
  index: StateIndex,
  y: Float64Array,
): ShaftMode {
  let speed = options.initialSpeed ?? 0;
  let way: 1 | -1 = speed < 0 ? -1 : 1;
  if (scenario.initial !== 'rest') {
    way = scenario.initial === 'runningForward' ? 1 : -1;
    const steady = steadySpeed(scenario, way);
    if (steady === null) throw new Error('no steady state to start from');
    speed = steady;
    const synchronous = (way * 2 * Math.PI * scenario.supply.frequency) / scenario.machine.polePairs;
    steadyCurrents(scenario, 1 - speed / synchronous, supply, y);
  }
  y[index.omega] = speed;
  let touching: ShaftMode['touching'] = 0;
  if (train.elastic) {
    y[index.loadSpeed] = speed / train.ratio;
    y[index.twist] = train.twistOf(train.steadyCoupling(speed, way));
    touching = train.touchingAt(y[index.twist]!);
  }
  if (speed !== 0) {
    const motion: Motion = { way, held: false };
    return { motor: motion, load: motion, touching };
  }
  const free: Motion = { way: 0, held: false };
  let shaft: ShaftMode = { motor: free, load: free, touching };
  for (const mass of train.masses) shaft = withMotion(shaft, mass, train.settle(mass, y, 0, shaft));
  return shaft;
}

/** Step of a difference quotient in time, s: small against every time constant, large against rounding. */
const QUOTIENT_STEP = 1e-8;

/** Rate of a function of the state, near enough to tell where to look for its zero. */
const quotient =
  (value: (y: Float64Array) => number): Watcher['slope'] =>
  (y, f) =>
    (value(y.map((x, k) => x + QUOTIENT_STEP * f[k]!)) - value(y)) / QUOTIENT_STEP;

const withMotion = (shaft: ShaftMode, mass: MassName, motion: Motion): ShaftMode => ({
  ...shaft,
  [mass]: motion,
});

function tidyCurrents(supply: Mode['supply'], y: Float64Array): void {
  const live = [0, 1, 2].filter((k) => supply[k]! >= 0);
  for (let k = 0; k < 3; k++) if (supply[k]! < 0) y[k] = 0;
  if (live.length !== 2) return;
  const [l, m] = live as [number, number];
  const shared = (y[l]! - y[m]!) / 2;
  y[l] = shared;
  y[m] = -shared;
}

const arcWatchers = (logic: StarterLogic): Watcher[] =>
  logic.arcing().map((k) => ({
    value: (state) => state[k]!,
    slope: (_state, f) => f[k]!,
    direction: 0,
    act: (now, state) => logic.currentZero(k, now, state),
  }));

/** Crossings of the thresholds of the zero-speed switch. */
function createSpeedWatchers(scenario: ScenarioShape, logic: StarterLogic, index: StateIndex) {
  const { zeroSpeedSwitch } = scenario.starter;
  return (): Watcher[] =>
    (zeroSpeedSwitch ? ([0, 1] as const) : []).map((d) => {
      const sign = d === 0 ? 1 : -1;
      const up = !logic.pickedUp[d];
      const threshold = up ? zeroSpeedSwitch!.pickUpSpeed : zeroSpeedSwitch!.dropOutSpeed;
      return {
        value: (state) => sign * state[index.omega]! - threshold,
        slope: (_state, f) => sign * f[index.omega]!,
        direction: up ? 1 : -1,
        act: (now) => logic.speedCrosses(d, up, now),
      };
    });
}
